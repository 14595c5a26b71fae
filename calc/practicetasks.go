package calc

// PracticeLevel is one step of the practice: what it asks of a hand, and the work it is laid on.
type PracticeLevel struct {
	Level int            `json:"level"`
	Name  string         `json:"name"`
	Works []PracticeWork `json:"works"` // the seed picks one
}

// PracticeWork is a piece of the shop that is practised on.
type PracticeWork struct {
	Name string `json:"name"`
	job  Job
}

// Line is the work in a few words; a timed arc is said.
func (w PracticeWork) Line() string {
	if w.job.Mode == "timed" {
		return w.Name + ", timed arc"
	}
	return w.Name
}

// practiceLevels from the widest computed window to the narrowest, then what is thin, coated or open. They are choices, not
// figures: the comment behind each is the room that its own card gives, in % of feed or travel, when it was chosen.
var practiceLevels = [...]PracticeLevel{
	{1, "thick bare sheet, wide window", []PracticeWork{
		{"tank stand, outside corner", Job{Metal: "mild-steel", Gauge: 12, Joint: "corner"}},        // 62
		{"planter box for the market garden", Job{Metal: "mild-steel", Gauge: 14, Joint: "corner"}}, // 50
	}},
	{2, "middling bare sheet over a small opening", []PracticeWork{
		{"planter side, two sheets edge to edge", Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(1)}}, // 45
		{"downpipe collar", Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Gap: Some(1)}},                       // 40
	}},
	{3, "zinc-coated sheet", []PracticeWork{
		{"gutter of a rainwater tank, outside corner", Job{Metal: "galvanized", Gauge: 18, Joint: "corner"}}, // 42
		{"overflow of a rainwater tank", Job{Metal: "galvanized", Gauge: 18, Joint: "lap"}},                  // 24
	}},
	{4, "narrow window: a build-up, or two sheets that draw heat", []PracticeWork{
		{"worn seat on a shaft", Job{Metal: "mild-steel", Joint: "overlay", ShaftDia: Some(25), Wire: Some(1.143)}}, // 9
		{"bracket on a planter", Job{Metal: "mild-steel", Gauge: 16, Joint: "tee"}},                                 // 13
	}},
	{5, "thin zinc-coated lap, or a timed arc over an open root", []PracticeWork{
		{"rainwater tank lid", Job{Metal: "galvanized", Gauge: 22, Joint: "lap"}}, // 28, at the quick end of a hand
		{"patch in a planter side", Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: Some(2)}},
	}},
}

// PracticeLevels lists the levels; read only.
func PracticeLevels() []PracticeLevel { return practiceLevels[:] }
