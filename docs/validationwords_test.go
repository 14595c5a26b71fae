package docs

// proves says for each quantity what its rows show and what they do not.
var proves = map[string]string{
	"current from wire feed, copper-base wires": "Spray needs more current than computed at the same feed. The " +
		"balance's constant is that of short arcs; hotter drops in spray would explain it, but no row shows that. " +
		"No row is of a short or a pulsed arc.",
	"current from wire feed, steel wire": "The heat balance of the wire agrees with all these sizes and feeds of " +
		"steel. A rule of thumb has no scatter of its own, and says nothing about bronze.",
	"strength of a fillet, throat": "Three tests show the size but hardly the scatter. They are of CuAl7 on plate; " +
		"nothing shows that they hold for another wire or thin sheet.",
	"strength of a fillet, bond": "Five tests of one laboratory are in each other's band. There is no other wire, " +
		"sheet or coat among them.",
	"tensile strength of a deposit": "The value is the guide minimum of a standard, not a typical deposit: it is low " +
		"on purpose, and its band is only the number's rounding.",
	"melting range of a wire": "Sources differ by more than their digits, since alloys with the same name differ. " +
		"They say nothing about fast cooling.",
	"pull of a seam": "Two published factors for welds in steel are in the band. None is of arc brazing.",
	"zinc oxide into the air": "The span of the source is in the band. The share of the zinc that becomes fume, 10 " +
		"to 80 %, is assumed: counting all of it, and half of the zinc that only melts, the rate was 4 to 17 times " +
		"the source's. It is no estimate of exposure; the necessary hood is judged by the band's high end.",
}

// untested are the results that no outside value has tested, with what a shop could measure to test them.
var untested = [][2]string{
	{"bead width, leg and throat", "cut a bead across, measure the width and both legs with a caliper, and note the " +
		"setting, the wire feed in 10 s and the travel"},
	{"wetting angle", "photograph the polished cut and measure the angle at both toes"},
	{"half-width of the burnt or melted zinc, mm", "wipe the soot off and measure from the toe to where the coat is " +
		"undamaged, on both faces"},
	{"peak temperature at the toe and on the back", "a thermocouple of 0.25 mm, spot welded 3 mm beside the seam"},
	{"whether a gap is bridged, and how far a root sags", "lay beads over gaps of 0.5, 1, 1.5 and 2 mm and cut them"},
	{"the rhythm of a timed arc", "film it with a second hand in view, count on and off, and note where the puddle " +
		"fell through"},
	{"bead in a position, and what drips", "lay the same bead flat, vertical and overhead and weigh what fell"},
	{"distortion of brazed sheet", "measure the bow of a strip of 300 mm before and after"},
	{"arc efficiency of this process",
		"a bead on a plate that is then dropped into a bucket with a known weight of water"},
	{"chance that a setting is good", "keep every trial with its verdict (`book trial`): of ten at 80 %, eight " +
		"should be good"},
}

// notAtHand are published results that would test the program, but whose figures have not been read: no row is made up.
var notAtHand = [][2]string{
	{"Materials 18(10):2339, rows L06, L07, L08, L12 and L13", "force, throat and length of five of the paper's " +
		"thirteen fillets, and which of them broke where. The other eight are below. The paper's spans on the face " +
		"that broke, 320 to 380 MPa of six in the throat and 113 to 278 MPa of seven in the bond, are checked"},
	{"TRGS 528, table 2", "coat, sheet, wire and travel behind its 1 to 9 mg/s for arc brazing of coated sheet"},
}

const validationHead = `# Computed and measured values compared

Made by tests: ` + "`go test ./calc_test -update`" + ` writes [validation.json](validation.json), then
` + "`go test ./docs -run Validation " +
	"-update`" + ` this page. How a source is known: *read*; *memory*, if the document
is not at hand, with its confidence; *practice*, a rule of the trade without a document.

## Results that no outside value has tested

No document gives these for arc brazing of sheet together with the setting. They are only computed, with a band that
follows from those of the inputs. A shop can measure them. From its book (` + "`book reading`" + `,
` + "`book trial`" + ` with ` + "`--measured-width`, `--measured-leg`, `--measured-throat`, " +
	"`--measured-zinc`" + `)
` + "`brazebooth book validation`" + ` makes the same comparison for its own booth.

`

const validationNotAtHand = `
## Published, and not at hand

These would test the program. Anybody who has the documents can add the rows to ` + "`tables/strength.go`" + ` and to
` + "`calc_test/measured_test.go`" + `.

`

const validationMeasured = `
## By quantity

The ratio is the computed over the outside value. Coverage is how many outside values are in the computed 95 % band,
with the binomial 95 % interval of that share (Clopper and Pearson): few rows prove little.

![Computed over outside, with bands](validation.svg)

| | quantity | rows | mean ratio | scatter | in the band | what it proves and what it does not |
|---|---|---|---|---|---|---|
`
