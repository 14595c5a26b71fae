package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

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
	return nil, wrong("no power source is called "+quote(name), "type "+near.Or(names)+"; or enter a new one: brazebooth book source --name "+quote(name))
}

func (d *Deps) firstSource(name string) ([]book.Revision, error) {
	s := book.Source{Name: name}
	s.Clean()
	r, err := d.author().New(book.SourceKind, s)
	return []book.Revision{r}, err
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
	bind(cmd, "rated-amps", "rated-duty", "nozzle-bore")
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
