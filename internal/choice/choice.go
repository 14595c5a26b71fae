// Package choice describes each choice of a job once: its names, how it is typed, set, cleared and shown, its values
// with the reasons behind each, and the figure of the card that it sets. Flags, completion, screens, the line-by-line
// questions, columns of a batch and practice all read these rows.
package choice

import (
	"cmp"
	"reflect"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Choice is one choice of a job: a name from a list, a sheet's thickness, or a number.
type Choice struct {
	Name    string         // of the flag, the column and the job's field: its JSON name with dashes
	Ask     string         // the question; "" to ask with Usage
	Usage   string         // what it means and what may be typed
	Without string         // what a card uses if the choice is not given; "" if the card's assumptions say so
	Also    []string       // other names that people use
	Figure  string         // the figure of a card or a procedure that it sets, "" for none
	Hand    bool           // changed from one test bead to the next
	Same    string         // what "same as the first member" means, "" for a choice that cannot follow the first member
	Kind    quantity.Field // how the typed text is read; 0 for names
	Unit    string         // of the number, "" for a name or a sheet

	values
	label string     // on the screens, if it is not the name
	step  [2]float64 // of a setting in metric and in inch units, in Unit; 0 for a choice that is no setting

	shown func(*calc.Card, quantity.System) string // in words, for a choice whose id people would not read
}

var all = slices.Concat(onCard, onPages)

// All lists every choice in the order in which they are read, so that of two mistakes always the same is reported. Do
// not change the list.
func All() []*Choice { return all }

// OnCard lists the choices that every card takes. Do not change the list.
func OnCard() []*Choice { return onCard }

// OnPages lists the choices that only the pages beside the card need. Do not change the list.
func OnPages() []*Choice { return onPages }

// Names are the names of choices.
func Names(list []*Choice) []string {
	names := make([]string, len(list))
	for i, c := range list {
		names[i] = c.Name
	}
	return names
}

// ByName returns the choice with exactly this name, nil if there is none.
func ByName(name string) *Choice { return first(func(c *Choice) bool { return c.Name == name }) }

// first is the first choice that fits, nil if there is none.
func first(fits func(*Choice) bool) *Choice {
	if i := slices.IndexFunc(all, fits); i >= 0 {
		return all[i]
	}
	return nil
}

// Named returns the choices with exactly these names.
func Named(names ...string) []*Choice {
	list := make([]*Choice, len(names))
	for i, name := range names {
		list[i] = ByName(name)
	}
	return list
}

// Called returns the choice with this name, label or figure, nil if there is none. Blanks, dashes and underscores count
// as the same.
func Called(text string) *Choice {
	key := Plain(text)
	return first(func(c *Choice) bool {
		return key != "" && (key == c.Words() || key == c.label || key == Plain(c.Figure) ||
			slices.Contains(c.Also, key))
	})
}

// Plain is a name in lower case, with single blanks between its words.
func Plain(name string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("-", " ", "_", " ").Replace(strings.ToLower(name))), " ")
}

// Label is the choice's name on the screens.
func (c *Choice) Label() string { return cmp.Or(c.label, c.Words()) }

// Second reports whether the choice is about the second member.
func (c *Choice) Second() bool { return strings.HasSuffix(c.Name, "2") }

// Words is the choice's name in separate words.
func (c *Choice) Words() string { return Plain(c.Name) }

// Field is the choice's name in the job's JSON and among the assumptions of a card.
func (c *Choice) Field() string { return strings.ReplaceAll(c.Name, "-", "_") }

// Help is the usage, and what a card uses if the choice is not given.
func (c *Choice) Help() string {
	if c.Without == "" {
		return c.Usage
	}
	return c.Usage + "; without it " + c.Without
}

// Applies reports whether a card's joint needs this choice.
func (c *Choice) Applies(card *calc.Card) bool {
	if c.Name == "backing" {
		return card.Used.Backing != ""
	}
	return !c.Second() || !card.Setup.One
}

// places are the indexes of a job's fields by their JSON names.
var places = func() map[string]int {
	at := map[string]int{}
	for i, f := range reflect.VisibleFields(reflect.TypeFor[calc.Job]()) {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		at[name] = i
	}
	return at
}()

// field returns the job's field with this JSON name.
func field[T any](j *calc.Job, name string) *T {
	return reflect.ValueOf(j).Elem().Field(places[name]).Addr().Interface().(*T)
}

// At returns the job's field for a choice that is a number with a unit.
func (c *Choice) At(j *calc.Job) *calc.Opt { return field[calc.Opt](j, c.Field()) }

func (c *Choice) id(j *calc.Job) *string { return field[string](j, c.Field()) }

// sheet returns a job's fields for a member's gauge and its thickness.
func (c *Choice) sheet(j *calc.Job) (gauge *int, mm *calc.Opt) {
	return field[int](j, c.Name), field[calc.Opt](j, strings.Replace(c.Name, "gauge", "thickness", 1))
}

// Assumed is the reason why a card assumes the choice, "" if it was given. The metal under a bead on a shaft is assumed
// as a thickness, not as a gauge.
func (c *Choice) Assumed(card *calc.Card) string {
	why := card.AssumedWhy(c.Field())
	if why == "" && c.Name == "gauge" {
		why = card.AssumedWhy("thickness")
	}
	return why
}

// Given reports whether a job answers this choice.
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

// Clear leaves the choice open again. This also clears the coating of a metal, and the currency with the last price.
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

// Show is a job's value of the choice, "" if none was given.
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

// Shown is a card's value of the choice, given or assumed; "" if it has none.
func (c *Choice) Shown(card *calc.Card, sys quantity.System) string {
	if c.shown != nil {
		return c.shown(card, sys)
	}
	return c.Show(&card.Used, sys)
}
