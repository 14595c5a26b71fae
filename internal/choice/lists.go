package choice

import (
	"slices"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Path returns the choices that are asked for on the way to a job's card, in their order. The times of a timed arc
// depend on the joint and on its root opening.
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

// Settings returns the choices that a welder sets or holds, in the order of the card.
func Settings() []*Choice {
	return Named("feed", "volts", "travel", "arc-on", "arc-off", "spot-step", "flow", "stickout")
}

// SettingOf returns the setting that a card's figure shows, nil for a figure that follows from others.
func SettingOf(figure string) *Choice {
	return first(func(c *Choice) bool { return c.step[0] > 0 && c.Figure == figure })
}

// Hand returns the settings that are changed from one test bead to the next: a timed arc has no travel, any other arc
// has no times.
func Hand(timed bool) []*Choice {
	return slices.DeleteFunc(Settings(), func(c *Choice) bool {
		return !c.Hand || c.Name == "travel" && timed || c.Kind == quantity.FieldDuration && !timed
	})
}

// HandNames are the names of the settings that are changed between test beads, in any mode.
func HandNames() []string {
	return Names(slices.DeleteFunc(slices.Clone(all), func(c *Choice) bool { return !c.Hand }))
}

// Open returns which of the named choices the job does not answer.
func Open(j *calc.Job, names []string) []string {
	return slices.DeleteFunc(slices.Clone(names), func(name string) bool { return ByName(name).Given(j) })
}
