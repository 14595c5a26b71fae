package cli

import (
	"context"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

func (d *Deps) bookTrial() *cobra.Command {
	var t book.Trial
	cmd := &cobra.Command{
		Use: "trial [NAME]", Short: "Keep a test bead: how it was laid, what it showed, what came of it",
		Long:    "Keep a test bead of a kept card: the card's job with the flags that were set otherwise, what was seen, and the verdict.",
		Example: `  brazebooth book trial "tank lid" --travel 7.5 --seen rolled-edge --verdict bad --peel "lets go at the toe"`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if !slices.Contains([]string{"good", "acceptable", "bad"}, t.Verdict) {
				return wrong("a trial wants a verdict", "type --verdict good, acceptable or bad")
			}
			if t.Seen != "" {
				ids, err := calc.SeenIDs(t.Seen)
				if err != nil {
					return err
				}
				t.Seen = ids
			}
			if t.Verdict == "good" && t.Seen != "" && t.Seen != "good" || t.Verdict == "bad" && t.Seen == "good" {
				return wrong("the verdict "+t.Verdict+" together with "+t.Seen, "say acceptable where a fault was let pass, or what was seen otherwise")
			}
			if len(args) == 0 && !jobFlags(cmd) {
				return wrong("a trial of no job", "name the kept card that was laid, or give the job: --metal --gauge --feed --travel")
			}
			if len(args) > 0 {
				err := d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
					r, c, err := cardOf(ctx, b, strings.Join(args, " "))
					t.Card, t.Job = r.ID, c.Card.Used
					return err
				})
				if err != nil {
					return err
				}
			}
			if err := jobInto(cmd, &t.Job); err != nil {
				return err
			}
			t.Source = cmd.Flags().Lookup("power-source").Value.String()
			return d.keepTrial(cmd, t)
		},
	}
	bindCard(cmd)
	cmd.Flags().StringVar(&t.Seen, "seen", "", "what the bead shows, as in correct")
	cmd.Flags().StringVar(&t.Verdict, "verdict", "", "good, acceptable or bad")
	cmd.Flags().StringVar(&t.Peel, "peel", "", "how the peel or bend went")
	cmd.Flags().StringVar(&t.Photo, "photo", "", "name of a photo's file")
	cmd.Flags().StringVar(&t.Lot, "lot", "", "lot of the wire")
	cmd.Flags().StringVar(&t.Note, "note", "", "anything worth knowing")
	return cmd
}

// keepTrial saves a whole trial and says what it teaches.
func (d *Deps) keepTrial(cmd *cobra.Command, t book.Trial) error {
	used, err := calc.Complete(t.Job)
	if err != nil {
		return err
	}
	t.Job = used
	if card, err := calc.Solve(t.Job); err == nil {
		t.Job = calc.Laid(&card)
		if err := d.sayStops(card.Warnings); err != nil {
			return err
		}
	}
	t.Clean()
	first, err := d.source(cmd, &t.Source)
	if err != nil {
		return err
	}
	inBook, err := d.keep(cmd, book.TrialKind, t, "trial of "+t.Verdict, first...)
	if err != nil || !inBook || t.Source == "" {
		return err
	}
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error { return d.tellEta(ctx, b, t.Source) })
}

func (d *Deps) bookReading() *cobra.Command {
	var pull, withdraw, confirm, lot, note string
	cmd := &cobra.Command{
		Use: "reading", Short: "What was measured while the arc ran; without amps and volts it lists the readings",
		Long: `Keep what was measured at a booth while the arc ran, for one power source: wire feed from a timed pull (--feed, or --pull
with the length of 6 seconds), stick-out, and the meter's amps and volts after the first second. From the readings the
program learns this power source's own current and volts. One that lies far from what the others predict is kept, flagged,
and used only when it is confirmed; a reading that was a mistake is withdrawn. Without amps and volts the readings are
listed with what they teach.`,
		Example: `  brazebooth book reading --power-source "booth 1" --pull 635mm --stickout 12mm --amps 96 --volts 15.2
  brazebooth book reading --power-source "booth 1"
  brazebooth book reading --withdraw 3f0a`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			switch marked := withdraw + confirm; {
			case withdraw != "" && confirm != "" || marked != "" && (cmd.Flags().Changed("amps") || cmd.Flags().Changed("volts")):
				return wrong("more than one thing at once", "withdraw, confirm and keep readings one by one")
			case marked != "" && !idLike.MatchString(marked):
				return wrong("a reading is meant by its id, not by "+quote(marked), "brazebooth book reading lists them: type at least the first four letters")
			case withdraw != "":
				return d.mark(cmd, []string{withdraw}, "reading", "withdrawn", func(a book.Author, r *book.Revision) (book.Revision, error) { return a.Delete(r) })
			case confirm != "":
				return d.mark(cmd, []string{confirm}, "reading", "confirmed", confirmed)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			if !job.Amps.Set && !job.Volts.Set {
				return d.listReadings(cmd, job)
			}
			if !job.Amps.Set {
				return wrong("volts without amps teach nothing", "type --amps as the meter shows them after the first second")
			}
			r, err := readingOf(cmd, job, pull)
			if err != nil {
				return err
			}
			r.Lot, r.Note = lot, note
			r.Clean()
			first, err := d.source(cmd, &r.Source)
			if err != nil {
				return err
			}
			inBook, err := d.keep(cmd, book.ReadingKind, r, "reading of "+r.Source, first...)
			if err != nil || !inBook {
				return err
			}
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				return d.tellLearned(ctx, b, r.Source, r.Filler, r.Wire, r.Mode)
			})
		},
	}
	bind(cmd, "filler", "wire", "mode", "feed", "amps", "volts", "travel", "stickout", "flow")
	cmd.Flags().StringVar(&pull, "pull", "", "length of wire that 6 seconds feed: 635mm or 25in")
	cmd.Flags().StringVar(&withdraw, "withdraw", "", "id of a reading that was a mistake")
	cmd.Flags().StringVar(&confirm, "confirm", "", "id of a flagged reading that was looked at again and stands")
	cmd.Flags().StringVar(&lot, "lot", "", "lot of the wire")
	cmd.Flags().StringVar(&note, "note", "", "anything worth knowing")
	cmd.Flags().String("power-source", "", "name of the power source")
	return cmd
}

// source makes sure that a power source is known: the first one of a book is entered with its first reading, any other
// only on purpose, since a slip of the pen would make a machine that is not there. While the server is away nobody can
// tell, and the name is taken as it is.
func (d *Deps) source(cmd *cobra.Command, to *string) ([]book.Revision, error) {
	name := *to
	if name == "" {
		return nil, nil
	}
	where, err := d.place(cmd)
	if err != nil {
		return nil, err
	}
	if book.IsServer(where) && book.Away(cmd.Context(), where) {
		return nil, nil
	}
	b, err := book.Read(cmd.Context(), where)
	if errors.Is(err, book.ErrNone) {
		return d.firstSource(name)
	}
	if err != nil {
		return nil, bookError(err)
	}
	defer b.Close()
	old, err := book.Named(cmd.Context(), b, book.SourceKind, name)
	if err == nil {
		if s, err := book.Body[book.Source](&old); err == nil {
			*to = s.Name // as it was entered
		}
		return nil, nil
	}
	if !errors.Is(err, book.ErrNone) {
		return nil, bookError(err)
	}
	known, err := b.List(cmd.Context(), book.Query{Kind: book.SourceKind})
	if err != nil {
		return nil, err
	}
	if len(known) == 0 {
		return d.firstSource(name)
	}
	var names []string
	for _, h := range known[:min(len(known), 6)] {
		names = append(names, plain.Line(h.Name, 40))
	}
	return nil, wrong("no power source is called "+quote(name), "type "+orList(names)+"; or enter a new one: brazebooth book source --name "+quote(name))
}

func (d *Deps) firstSource(name string) ([]book.Revision, error) {
	s := book.Source{Name: name}
	s.Clean()
	r, err := d.author().New(book.SourceKind, s)
	return []book.Revision{r}, err
}

func confirmed(a book.Author, r *book.Revision) (book.Revision, error) {
	if r.Deleted {
		return *r, wrong("this reading was withdrawn", "brazebooth book restore --kind reading ID takes that back")
	}
	d, err := book.Body[book.Reading](r)
	if err != nil {
		return *r, err
	}
	d.Confirmed = true
	return a.Change(r, d)
}

// pullSeconds is how long a wire pull takes.
const pullSeconds = 6

// readingOf reads the flags of one reading.
func readingOf(cmd *cobra.Command, job calc.Job, pull string) (book.Reading, error) {
	source := strings.TrimSpace(cmd.Flags().Lookup("power-source").Value.String())
	if source == "" {
		return book.Reading{}, wrong("a reading of no power source", `type --power-source "booth 1"`)
	}
	if pull != "" {
		l, err := quantity.ParseLength(pull)
		if err != nil {
			return book.Reading{}, inFlag("pull", err)
		}
		if job.Feed.Set {
			return book.Reading{}, wrong("--pull together with --feed", "give one of them")
		}
		job.Feed = calc.Some(float64(l) * 60 / pullSeconds / 1000)
	}
	if !job.Feed.Set || !job.StickOut.Set {
		return book.Reading{}, wrong("a reading teaches only with feed and stick-out measured", "type --pull 635mm (6 seconds of wire) or --feed, and --stickout 12mm")
	}
	amps := job.Amps
	job.Amps = calc.Opt{}
	used, err := calc.Complete(job)
	if err != nil {
		return book.Reading{}, err
	}
	return book.Reading{Source: source, Filler: used.Filler, Wire: used.Wire.V, Mode: used.Mode, Feed: job.Feed.V, StickOut: job.StickOut.V, Amps: amps.V, Volts: job.Volts.V, Travel: job.Travel.V, Flow: job.Flow.V}, nil
}

// listReadings shows what stands, and what it teaches.
func (d *Deps) listReadings(cmd *cobra.Command, job calc.Job) error {
	used, err := calc.Complete(job)
	if err != nil {
		return err
	}
	source := strings.TrimSpace(cmd.Flags().Lookup("power-source").Value.String())
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		list, err := book.Readings(ctx, b, source)
		if err != nil {
			return err
		}
		if _, err := book.Learn(list, used.Filler, used.Wire.V, used.Mode); err != nil {
			return err
		}
		for i := range list {
			r := &list[i].Reading
			flag := ""
			if list[i].Flagged {
				flag = "  FLAGGED: far from the others; look again, then confirm or withdraw it"
			}
			if err := d.say("%s %s %-16s %s %.3f mm %s: %.2f m/min, %.0f mm, %.0f A, %.1f V%s\n", list[i].Revision.ID, list[i].Revision.At[:16], plain.Line(r.Source, 16), r.Filler, r.Wire, r.Mode, r.Feed, r.StickOut, r.Amps, r.Volts, flag); err != nil {
				return err
			}
		}
		if source == "" || len(list) == 0 {
			return d.say("%d readings\n", len(list))
		}
		return d.tellLearned(ctx, b, source, used.Filler, used.Wire.V, used.Mode)
	})
}

// idLike is an id or its beginning.
var idLike = regexp.MustCompile(`^[0-9a-fA-F]{4,16}$`)

// jobFlags reports whether anything of a job was given.
func jobFlags(cmd *cobra.Command) bool {
	for _, f := range [...]string{"metal", "gauge", "filler", "wire", "mode", "feed", "amps", "travel"} {
		if cmd.Flags().Changed(f) {
			return true
		}
	}
	return false
}

// tellEta says what a power source's trials teach of the heat, each with how much it was expected.
func (d *Deps) tellEta(ctx context.Context, b book.Book, source string) error {
	list, err := book.Verdicts(ctx, b, source)
	if err != nil {
		return err
	}
	e := calc.LearnEta(list)
	if e.Used == 0 {
		return d.say("%s: no verdict tells of its heat yet\n", plain.Line(source, 60))
	}
	var said []string
	for _, x := range e.Evidence {
		said = append(said, fmt.Sprintf("%s (expected in %.0f of 100)", x.Heat, x.Expected))
	}
	return d.say("%s: arc efficiency %.3f (± %.3f) by %d verdicts: %s\n", plain.Line(source, 60), e.Mean, 2*e.Sigma, e.Used, strings.Join(said, ", "))
}

// tellLearned says what a power source's readings teach by now.
func (d *Deps) tellLearned(ctx context.Context, b book.Book, source, filler string, wire float64, mode string) error {
	list, err := book.Readings(ctx, b, source)
	if err != nil {
		return err
	}
	l, err := book.Learn(list, filler, wire, mode)
	if err != nil {
		return err
	}
	flagged := 0
	for _, r := range list {
		if r.Flagged {
			flagged++
			if err := d.say("FLAGGED: the reading %s, %.0f A and %.1f V, is far from what the others predict and is not used. Look again, then: brazebooth book reading --confirm %s, or --withdraw %s\n",
				r.Revision.ID, r.Reading.Amps, r.Reading.Volts, r.Revision.ID, r.Revision.ID); err != nil {
				return err
			}
		}
	}
	return d.say("%s with %s, %.3f mm, %s: calibration voltage %.2f V (± %.2f, %d readings), volts factor %.3f (± %.3f, %d readings), %d flagged\n",
		plain.Line(source, 60), filler, wire, mode, l.Phi.Mean, 2*l.Phi.Sigma, l.Phi.Used, l.Volts.Mean, 2*l.Volts.Sigma, l.Volts.Used, flagged)
}

func (d *Deps) bookSource() *cobra.Command {
	var s book.Source
	var least, most string
	var leastAmps, mostAmps calc.Opt
	cmd := &cobra.Command{
		Use: "source", Short: "A power source with its plate; without a name it lists them", Args: noArgs,
		Example: `  brazebooth book source --name "booth 1" --rated-amps 200A --rated-duty 60% --nozzle-bore 1/2in`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if s.Clean(); strings.TrimSpace(s.Name) == "" {
				if cmd.Flags().Changed("name") {
					return wrong("a power source without a name", `type --name "booth 1"`)
				}
				return d.list(cmd, book.Query{Kind: book.SourceKind}, false)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			plate := job
			for _, f := range [...]struct {
				text string
				to   *calc.Opt
				flag string
			}{{least, &leastAmps, "least-amps"}, {most, &mostAmps, "most-amps"}} {
				if f.text == "" {
					continue
				}
				a, err := quantity.ParseCurrent(f.text)
				if err != nil {
					return inFlag(f.flag, err)
				}
				*f.to = calc.Some(float64(a))
			}
			s.Clean()
			onto := func(s *book.Source) {
				for _, f := range [...]struct {
					from calc.Opt
					to   *float64
				}{{plate.RatedAmps, &s.RatedAmps}, {plate.RatedDuty, &s.RatedDuty}, {plate.NozzleBore, &s.Nozzle}, {leastAmps, &s.LeastAmps}, {mostAmps, &s.MostAmps}} {
					if f.from.Set {
						*f.to = f.from.V
					}
				}
			}
			return d.keepSource(cmd, s, onto)
		},
	}
	bindPages(cmd, "rated-amps", "rated-duty", "nozzle-bore")
	cmd.Flags().StringVar(&s.Name, "name", "", "what it is called")
	cmd.Flags().StringVar(&least, "least-amps", "", "least current on its plate")
	cmd.Flags().StringVar(&most, "most-amps", "", "most current on its plate")
	cmd.Flags().StringVar(&s.Note, "note", "", "anything worth knowing")
	return cmd
}

// keepSource keeps a new power source, or what was given of one that is there; what was not given stays.
func (d *Deps) keepSource(cmd *cobra.Command, s book.Source, onto func(*book.Source)) error {
	old, known, err := d.known(cmd, book.SourceKind, s.Name)
	if err != nil {
		return err
	}
	if !known {
		onto(&s)
		if s.LeastAmps > 0 && s.MostAmps > 0 && s.LeastAmps > s.MostAmps {
			return plateWrong(&s)
		}
		_, err := d.keep(cmd, book.SourceKind, s, "power source "+s.Name)
		return err
	}
	return d.change(cmd, &old, func(r *book.Revision) (any, string, error) {
		was, err := book.Body[book.Source](r)
		next := was
		onto(&next)
		if cmd.Flags().Changed("note") {
			next.Note = s.Note
		}
		switch {
		case err != nil:
			return nil, "", err
		case next.LeastAmps > 0 && next.MostAmps > 0 && next.LeastAmps > next.MostAmps:
			return nil, "", plateWrong(&next)
		case next == was:
			return nil, "power source " + plain.Line(was.Name, 60) + plateText(&was) + "; nothing to change", nil
		}
		return next, "power source " + next.Name + plateText(&next), nil
	})
}

// plateText is what is known of a plate.
func plateText(s *book.Source) string {
	text := ""
	if s.RatedAmps > 0 {
		text += fmt.Sprintf(", rated %.0f A", s.RatedAmps)
	}
	if s.RatedDuty > 0 {
		text += fmt.Sprintf(", duty cycle %.0f %%", s.RatedDuty)
	}
	if s.LeastAmps > 0 {
		text += fmt.Sprintf(", from %.0f A", s.LeastAmps)
	}
	if s.MostAmps > 0 {
		text += fmt.Sprintf(", up to %.0f A", s.MostAmps)
	}
	if s.Nozzle > 0 {
		text += fmt.Sprintf(", nozzle %.1f mm", s.Nozzle)
	}
	return text
}

func plateWrong(s *book.Source) error {
	return wrong(fmt.Sprintf("a plate from %.0f to %.0f A", s.LeastAmps, s.MostAmps), "--least-amps is the smaller of the two")
}

// known looks a record up by its name; a book that is not there yet knows none. While the server is away nobody can tell,
// and that is an error: a second record of the name would hide the first.
func (d *Deps) known(cmd *cobra.Command, kind book.Kind, name string) (r book.Revision, found bool, err error) {
	where, err := d.place(cmd)
	if err != nil {
		return r, false, err
	}
	b, err := book.Read(cmd.Context(), where)
	if errors.Is(err, book.ErrNone) {
		return r, false, nil
	}
	if err != nil {
		return r, false, bookError(err)
	}
	defer b.Close()
	r, err = book.Named(cmd.Context(), b, kind, name)
	if errors.Is(err, book.ErrNone) {
		return r, false, nil
	}
	return r, err == nil, bookError(err)
}

// change saves another state of a record; that wants the book itself. What comes of the record is asked again where
// somebody else changes it meanwhile; a nil body leaves it as it is.
func (d *Deps) change(cmd *cobra.Command, old *book.Revision, next func(*book.Revision) (body any, what string, err error)) error {
	return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
		for {
			now, err := b.Get(ctx, old.ID)
			if err != nil {
				return err
			}
			body, what, err := next(&now)
			if err != nil {
				return err
			}
			if body == nil {
				return d.say("%s\n", plain.Line(what, 200))
			}
			r, err := d.author().Change(&now, body)
			if err != nil {
				return err
			}
			err = b.SaveOn(ctx, r)
			if errors.Is(err, book.ErrStale) && ctx.Err() == nil {
				continue
			}
			if err != nil {
				return err
			}
			return d.say("changed %s %s\n", r.ID, plain.Line(what, 200))
		}
	})
}

func (d *Deps) bookSpool() *cobra.Command {
	var s book.Spool
	var used float64
	cmd := &cobra.Command{
		Use: "spool", Short: "A spool of wire and what is left on it; without a lot it lists them", Args: noArgs,
		Example: `  brazebooth book spool --lot A17 --filler cusi3 --wire .035 --full 4540
  brazebooth book spool --lot A17 --used 120`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if s.Clean(); strings.TrimSpace(s.Lot) == "" {
				if cmd.Flags().Changed("lot") {
					return wrong("a spool without a lot", "type what is on it: --lot A17")
				}
				return d.list(cmd, book.Query{Kind: book.SpoolKind}, false)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			if !(s.Full >= 0 && s.Full < 1e6) || !(math.Abs(used) < 1e6) {
				return wrong("a spool of less than nothing, or of more than a tonne", "type grams: --full 4540, --used 120; --used -120 puts back what was a slip")
			}
			s.Clean()
			return d.spool(cmd, s, used, job)
		},
	}
	bind(cmd, "filler", "wire")
	cmd.Flags().StringVar(&s.Lot, "lot", "", "lot or number on the spool")
	cmd.Flags().Float64Var(&s.Full, "full", 0, "grams of wire on the full spool")
	cmd.Flags().Float64Var(&used, "used", 0, "grams that were used since")
	cmd.Flags().StringVar(&s.Note, "note", "", "anything worth knowing")
	return cmd
}

// spool keeps a new spool, or takes used wire off one that is there.
func (d *Deps) spool(cmd *cobra.Command, s book.Spool, used float64, job calc.Job) error {
	old, known, err := d.known(cmd, book.SpoolKind, s.Lot)
	if err != nil {
		return err
	}
	if !known {
		complete, err := calc.Complete(job)
		if err != nil {
			return err
		}
		if s.Full == 0 {
			return wrong("a new spool without its weight", "type --full 4540 (grams)")
		}
		s.Filler, s.Wire, s.Left = complete.Filler, complete.Wire.V, s.Full-used
		if s.Left < 0 || s.Left > s.Full {
			return spoolWrong(&s)
		}
		_, err = d.keep(cmd, book.SpoolKind, s, fmt.Sprintf("spool %s, %.0f g left", s.Lot, s.Left))
		return err
	}
	return d.change(cmd, &old, func(r *book.Revision) (any, string, error) {
		was, err := book.Body[book.Spool](r)
		if err != nil {
			return nil, "", err
		}
		next, err := spoolNow(cmd, was, s, used, job)
		if err != nil {
			return nil, "", err
		}
		if next == was {
			return nil, spoolText(&next), nil
		}
		return next, spoolText(&next), nil
	})
}

// spoolNow is a spool with what was given.
func spoolNow(cmd *cobra.Command, was, s book.Spool, used float64, job calc.Job) (book.Spool, error) {
	next := was
	if s.Full > 0 {
		next.Left += s.Full - was.Full
		next.Full = s.Full
	}
	next.Left -= used
	if cmd.Flags().Changed("note") {
		next.Note = s.Note
	}
	if job.Filler != "" {
		next.Filler = job.Filler
	}
	if job.Wire.Set {
		next.Wire = job.Wire.V
	}
	if next.Left < 0 || next.Left > next.Full {
		return next, spoolWrong(&next)
	}
	return next, nil
}

// spoolText says what is left.
func spoolText(s *book.Spool) string {
	f, _ := tables.FillerByID(s.Filler)
	length := ""
	if m, err := metres(s.Left, s.Wire, f.Density.V); err == nil {
		length = fmt.Sprintf(", %.0f m of wire", m)
	}
	return fmt.Sprintf("spool %s: %s %s mm, %.0f g left%s", plain.Line(s.Lot, 60), s.Filler, strconv.FormatFloat(s.Wire, 'g', 4, 64), s.Left, length)
}

func spoolWrong(s *book.Spool) error {
	return wrong(fmt.Sprintf("%.0f g cannot be left of a spool of %.0f g", s.Left, s.Full), "check the grams; --full mends the spool's weight")
}

// metres is a mass of wire as its length.
func metres(grams, wire, density float64) (float64, error) {
	if !(wire > 0) || !(density > 0) {
		return 0, calc.ErrRange
	}
	return grams / calc.MassPerLength(wire, density), nil
}

func (d *Deps) bookPerson() *cobra.Command {
	return &cobra.Command{
		Use: "person [NAME]", Short: "A short name of somebody who saves; without one it lists them",
		RunE: func(cmd *cobra.Command, args []string) error {
			p := book.Person{Name: strings.Join(args, " ")}
			p.Clean()
			if p.Name == "" {
				return d.list(cmd, book.Query{Kind: book.PersonKind}, false)
			}
			if _, known, err := d.known(cmd, book.PersonKind, p.Name); known || err != nil {
				return errors.Join(err, d.say("%s is in the book\n", plain.Line(p.Name, 60)))
			}
			_, err := d.keep(cmd, book.PersonKind, p, "person "+p.Name)
			return err
		},
	}
}
