// Package choice describes each choice of a job once: its names, how it is typed, set, cleared and shown, the values
// it may have with what each rests on, and the figure of the card that it is. Flags, completion, screens, questions
// line by line, columns of a batch and practice read these rows.
package choice

import (
	"cmp"
	"reflect"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Choice is one choice of a job: a name out of a list, a sheet's thickness, or a number.
type Choice struct {
	Name    string         // of its flag, its column and the job's field: its JSON name with dashes
	Ask     string         // the question; "" where the usage asks
	Usage   string         // what it is and what may be typed
	Without string         // what a card takes where it is not given, "" for what its assumptions say
	Also    []string       // what else people call it
	Figure  string         // the figure of a card or a procedure that it is, "" for none
	Hand    bool           // changed from one test bead to the next
	Same    string         // what following the first member means, "" where there is nothing to follow
	Kind    quantity.Field // the box it is typed into, 0 for names
	Unit    string         // of its number, "" for a name or a sheet

	values
	label string     // on the screens, where that is not the name
	step  [2]float64 // of a setting in metric and in inch units, in Unit; 0 for no setting

	shown func(*calc.Card, quantity.System) string // in words, where people would not read the id
}

var all = slices.Concat(onCard[:], onPages[:])

// All lists every choice in the order in which they are read: of two mistakes the same one is always named. Read only.
func All() []Choice { return all }

// OnCard lists those that every card takes; read only.
func OnCard() []Choice { return all[:len(onCard)] }

// OnPages lists those that only the pages beside the card need; read only.
func OnPages() []Choice { return all[len(onCard):] }

// ByName returns the choice with exactly this name, nil for none.
func ByName(name string) *Choice {
	for i := range all {
		if all[i].Name == name {
			return &all[i]
		}
	}
	return nil
}

// Named are the choices with exactly these names.
func Named(names ...string) []*Choice {
	list := make([]*Choice, len(names))
	for i, name := range names {
		list[i] = ByName(name)
	}
	return list
}

// Called returns the choice with this name, label or figure, with blanks, dashes or underscores in it; nil for none.
func Called(text string) *Choice {
	key := words(text)
	for i := range all {
		c := &all[i]
		names := append([]string{words(c.Name), c.label, words(c.Figure)}, c.Also...)
		if key != "" && slices.Contains(names, key) {
			return c
		}
	}
	return nil
}

func words(name string) string {
	return strings.ToLower(strings.TrimSpace(strings.NewReplacer("-", " ", "_", " ").Replace(name)))
}

// Path are the choices that lead to the card of a job, in their order. A timed arc's times hang on the joint and on its
// root opening.
func Path(j *calc.Job) []*Choice {
	names := []string{"metal", "gauge", "wire", "mode"}
	if j.Mode == "timed" {
		names = append(names, "joint")
		if j.Joint == "butt" || j.Joint == "corner" {
			names = append(names, "gap")
		}
	}
	return Named(names...)
}

// settings are what a welder sets or holds, in the order of the card.
var settings = [...]string{"feed", "volts", "travel", "arc-on", "arc-off", "spot-step", "flow", "stickout"}

// Settings are the choices that a welder sets or holds, in the order of the card.
func Settings() []*Choice { return Named(settings[:]...) }

// SettingOf returns the setting that a figure of a card is, nil for a figure that follows from others.
func SettingOf(figure string) *Choice {
	for i := range all {
		if c := &all[i]; c.step[0] > 0 && c.Figure == figure {
			return c
		}
	}
	return nil
}

// Hand are the settings that are changed from one test bead to the next: a timed arc has no travel, any other no times.
func Hand(timed bool) []*Choice {
	return slices.DeleteFunc(Settings(), func(c *Choice) bool {
		return !c.Hand || c.Name == "travel" && timed || c.Kind == quantity.FieldDuration && !timed
	})
}

// HandNames are the names of the settings that are changed between test beads, of any mode.
func HandNames() []string {
	var names []string
	for i := range all {
		if all[i].Hand {
			names = append(names, all[i].Name)
		}
	}
	return names
}

// Open are those of the named choices that a job leaves open.
func Open(j *calc.Job, names []string) []string {
	var open []string
	for _, name := range names {
		if !ByName(name).Given(j) {
			open = append(open, name)
		}
	}
	return open
}

// Label is what the screens call it.
func (c *Choice) Label() string { return cmp.Or(c.label, c.Words()) }

// Second reports a choice of the second member.
func (c *Choice) Second() bool { return strings.HasSuffix(c.Name, "2") }

// Words are the name's own words.
func (c *Choice) Words() string { return words(c.Name) }

// Field is the name that the job's JSON and the assumptions of a card have for it.
func (c *Choice) Field() string { return strings.ReplaceAll(c.Name, "-", "_") }

// Help is the usage with what a card takes where the choice is not given.
func (c *Choice) Help() string {
	if c.Without == "" {
		return c.Usage
	}
	return c.Usage + "; without it " + c.Without
}

// Applies reports whether the joint of a card has this choice.
func (c *Choice) Applies(card *calc.Card) bool {
	if c.Name == "backing" {
		return card.Used.Backing != ""
	}
	return !c.Second() || !card.Setup.One
}

// places is where a job has its fields, by their JSON names.
var places = func() map[string]int {
	at := map[string]int{}
	for i, f := range reflect.VisibleFields(reflect.TypeFor[calc.Job]()) {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		at[name] = i
	}
	return at
}()

// field is where a job has what it calls so.
func field[T any](j *calc.Job, name string) *T {
	return reflect.ValueOf(j).Elem().Field(places[name]).Addr().Interface().(*T)
}

// At is where a job has the number of a choice with a unit.
func (c *Choice) At(j *calc.Job) *calc.Opt { return field[calc.Opt](j, c.Field()) }

func (c *Choice) id(j *calc.Job) *string { return field[string](j, c.Field()) }

// sheet is where a job has a member's gauge and its thickness.
func (c *Choice) sheet(j *calc.Job) (gauge *int, mm *calc.Opt) {
	return field[int](j, c.Name), field[calc.Opt](j, strings.Replace(c.Name, "gauge", "thickness", 1))
}

// Assumed is why a card assumes the choice, "" where it was given. What lies under a bead on a shaft is assumed as a
// thickness.
func (c *Choice) Assumed(card *calc.Card) string {
	why := card.AssumedWhy(c.Field())
	if why == "" && c.Name == "gauge" {
		why = card.AssumedWhy("thickness")
	}
	return why
}

// Given reports whether a job has this choice.
func (c *Choice) Given(j *calc.Job) bool {
	switch c.Kind {
	case 0:
		return *c.id(j) != ""
	case quantity.FieldSize:
		gauge, mm := c.sheet(j)
		return *gauge != 0 || mm.Set
	}
	return c.At(j).Set
}

// Clear leaves the choice open again. A metal's coating goes with it, and the currency with the last price.
func (c *Choice) Clear(j *calc.Job) {
	switch c.Kind {
	case 0:
		c.name(j, "")
	case quantity.FieldSize:
		gauge, mm := c.sheet(j)
		*gauge, *mm = 0, calc.Opt{}
	default:
		*c.At(j) = calc.Opt{}
		if !slices.ContainsFunc(prices(j), func(p *calc.Opt) bool { return p.Set }) {
			j.Currency = ""
		}
	}
}

// Show is the choice as a job has it, "" where it was not given.
func (c *Choice) Show(j *calc.Job, sys quantity.System) string {
	switch {
	case !c.Given(j):
		return ""
	case c.Kind == 0:
		return *c.id(j)
	case c.Kind == quantity.FieldSize:
		gauge, mm := c.sheet(j)
		return sheetText(*gauge, *mm, sys)
	}
	text := quantity.Show(c.At(j).V, c.Unit, sys)
	if strings.HasPrefix(c.Unit, "per ") && j.Currency != "" {
		text += " in " + j.Currency
	}
	return text
}

// Shown is the choice as a card has it, given or assumed; "" where it has none.
func (c *Choice) Shown(card *calc.Card, sys quantity.System) string {
	if c.shown != nil {
		return c.shown(card, sys)
	}
	return c.Show(&card.Used, sys)
}
