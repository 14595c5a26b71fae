package cli

import (
	"cmp"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// pageCommand is a command that answers with one advice page.
type pageCommand struct {
	name, short, long, example string
}

var pageCommands = []pageCommand{
	{"fit", "Should this be arc-brazed at all? The answer, its reasons, what a shop does instead",
		`Whether this job should be arc-brazed: suitable, possible with care, choose another way, or stop; the reasons,
heaviest first, each with its source; and for each "no" what a shop does instead. A stop is an answer: exit code 0.`,
		"  brazebooth fit --metal galvanized --gauge 20ga --joint lap --use seal --hazard none"},
	{"filler", "Every wire ranked for this pair of metals: what speaks for it, what rules it out",
		`Every brazing wire ranked for this pair of metals: the trade's rules, what melts before what, and how large its
computed operating window is; colour, strength, wire and cost of a metre. Then what the pair itself needs: how
the heat splits, where the arc points, which member governs.`,
		"  brazebooth filler --metal stainless-304 --gauge 1.5mm --metal2 copper --gauge2 2mm --joint lap" +
			" --wire-price 25EUR/kg"},
	{"prepare", "Before the arc: cleaning, fit-up, tacks, warming, the seam's order, feeding the wire",
		`What to do before the arc, by metal and mass: cleaning, bevel, vent gap, tacks, backing, preheat and
interpass, the order in which the seam's pieces are laid, how soft wire is fed, and what comes after.`,
		"  brazebooth prepare --metal grey-iron --gauge 8mm --joint butt --length 120mm"},
	{"pulse", "All settings of a pulsed arc: peak, pulse time, base, frequency, effective current",
		`The peak current, pulse time, base current and frequency that throw one drop a pulse at this wire feed, the
effective current, and what the pulses add to the power of mean volts times mean amps.`,
		"  brazebooth pulse --metal galvanized --gauge 16ga --joint lap"},
	{"strength", "What the joint carries: throat, bond and sheet, and the load to allow",
		`What a joint of this length carries in its throat, its bond and its sheet, which of them governs, and the load
to allow at a safety factor on the low edge. The throat is the computed one, or --throat or --leg as measured.`,
		"  brazebooth strength --metal stainless-304 --gauge 1.5mm --joint tee --length 80mm --load 2kN"},
	{"distortion", "What shrinks: pull along the seam, the width that stays flat, how far it bends",
		`How strongly the seam pulls the sheet together when it has cooled, how wide the sheet beside it may be before
it waves, how far a butt closes and a plate bends, and what lessens it.`,
		"  brazebooth distortion --metal mild-steel --gauge 1mm --joint butt"},
	{"haz", "The heat-affected zone: how hard, how soft, how wide",
		`What the heat does to the sheet beside the bead: how wide the changed zone is and how hard it becomes, from the
sheet's composition and its cooling time; how wide and how soft the band beyond it is in high-strength sheet.`,
		"  brazebooth haz --metal dp800 --gauge 1.2mm --joint lap"},
	{"air", "What the zinc puts into the air, clean air against it, eye shade",
		`What the coating's zinc puts into the air for each metre and hour of arc, and the clean air that would thin it
to each body's limit. It compares set-ups; it does not replace extraction, a respirator or sampling.`,
		"  brazebooth air --metal galvanized --gauge 20ga --joint lap"},
	{"overlay", "Build-up on plate or shaft: pitch, layers, turning speed, time, wire",
		`Bead pitch, layers for a wanted height, turning speed and feed of a shaft, arc time and wire, and whether the
base melts into the overlay.`,
		"  brazebooth overlay --metal mild-steel --gauge 10mm --filler cual8 --shaft-dia 40mm --length 30mm" +
			" --layer 2mm --feed 300ipm --travel 6"},
	{"passes", "A joint that one bead does not fill: groove, beads, heights, cooling between them",
		`The groove of a butt in plate from 2 to 12 mm, with root opening, root face and angle, or the section of a
large fillet; how many beads fill it at the card's own feed and travel, how high each brings it, and how long the plate
cools between them. --gap gives another root opening, --leg another fillet.`,
		"  brazebooth passes --metal mild-steel --gauge 6mm --joint butt --gap 2mm --length 200mm"},
	{"plug", "A plug: hole, metal, time, how hot the sheet below becomes",
		`A hole in the upper sheet that is filled and wetted to the sheet below: its size, the metal and time of one
plug, and how hot the sheet below becomes at the rim, which must wet, and in the middle, which must not melt through.
What plugs carry is on the page strength, their price on the page cost.`,
		"  brazebooth plug --metal galvanized --gauge 1mm --joint plug --hole 9mm"},
	{"machine", "The setting against a power source's plate, the nozzle, the spool",
		`Duty at this current from the plate's figures, the load line, the gas flow that a nozzle carries smoothly, and
how long a full spool lasts.`,
		"  brazebooth machine --metal galvanized --gauge 16ga --feed 290ipm --rated-amps 200A --rated-duty 60%" +
			" --nozzle-bore 1/2in"},
	{"cost", "Time, wire, gas and money of a seam, bronze against steel",
		`Arc time, wire and gas of a seam and what they cost at your prices; whole spools and bottles to order; and the
same seam in steel wire with the grinding and zinc repair that it brings.`,
		"  brazebooth cost --metal galvanized --gauge 20ga --length 2m --count 30 --wire-price 25EUR/kg" +
			" --labour-rate 45 --steel-price 3EUR/kg --grinding 4 --zinc-repair 2"},
}

func (d *Deps) pageCommand(pc *pageCommand) *cobra.Command {
	page, _ := advice.EntryByName(pc.name)
	cmd := &cobra.Command{
		Use: pc.name, Short: pc.short, Long: pc.long, Example: pc.example, Args: noArgs,
		RunE: d.answers(func(cmd *cobra.Command, job calc.Job) ([]report.Block, error) {
			switch pc.name { // the command's name already gives the joint or the mode
			case "overlay", "plug":
				job.Joint = cmp.Or(job.Joint, pc.name)
			case "pulse":
				job.Mode = cmp.Or(job.Mode, "pulsed")
			}
			card, err := d.solve(cmd.Context(), job)
			if err != nil {
				return nil, err
			}
			p, err := page.Answer(cmd.Context(), &card)
			if err != nil {
				return nil, err
			}
			return report.Page(&p, openFlags(&p)), nil
		}),
	}
	bindCard(cmd, append([]string{"use", "hazard"}, page.Needs...)...)
	bindAnswer(cmd, "schema.json")
	return cmd
}

// openFlags are the flags of the page's own choices that were not given.
func openFlags(p *advice.Page) []string {
	page, _ := advice.EntryByName(p.Name)
	names := choice.Open(&p.Card.Job, page.Asks(p.Card.Used.Joint))
	for i, n := range names {
		names[i] = "--" + n
	}
	return names
}
