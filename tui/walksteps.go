package tui

// walkStep is one stop of the walk: the keys that lead there from the first screen, the line that is pointed at, and
// what is said of it.
type walkStep struct {
	keys string // by name, with blanks between
	at   string // what stands on that line
	says string
}

const toExampleCard = "tab tab tab tab "

// walkSteps go the way of a job. Each text has room in four lines of the narrowest terminal, and states no figure: the
// screen above it does.
var walkSteps = [...]walkStep{
	{"", "galvanized", "A real job, already computed. On top stands the verdict, under it what was chosen, in the " +
		"middle the question, then the card."},
	{"", "▸", "▸ is the row you are on. ↑↓ or its number picks, enter chooses and goes on, esc goes back. What " +
		"nobody chose is marked ~, assumed."},
	{toExampleCard, "travel", "The card. Dial these three at the booth: wire feed, volts, travel. They are " +
		"computed: first a bead on scrap."},
	{toExampleCard + "right", "volts", "Here the range is the doubt: 95 of 100 fall in it, as of all results. " +
		"Green, of feed and travel: how far each may go alone and still be good."},
	{toExampleCard + "enter", "wire feed", "enter asks why: how a figure comes about, what it rests on and from " +
		"which source; here also how near each limit is."},
	{toExampleCard + "up", "yours", "↑ gives more, ↓ less, digits type a value. It is yours now and all others " +
		"follow. r takes the suggestion back, ctrl+z any change."},
	{toExampleCard + ". 1", "galvanized", "tab leads to the choices, or a point and a number. ←→ picks one, ↑↓ " +
		"changes it in place, enter shows its list. .0 lists the rest."},
	{toExampleCard + "c", "cautions", "c shows every caution whole. ■ stops the job, ▲ is a hazard or a fault to " +
		"come, • a note. Read them before the arc."},
	{toExampleCard + "m", "m/min →", "m is the map: every wire feed and travel, and what each would do. The cross " +
		"is where you are. The arrow keys walk in it, the card follows."},
	{toExampleCard + "t", "first spot on", "t is the timed arc: so long on, so long off, over and over, to bridge " +
		"an open root. Space plays the beat."},
	{toExampleCard + "b", "", "b is the booth view: the figures of the card readable from where you stand. The " +
		"arrows pick and change them, esc leads back."},
	{toExampleCard + "p", "[fit]", "p opens the pages, in the order of the work: is it a job for bronze, how to " +
		"prepare it, what to check, what to keep."},
	{toExampleCard + "p right right right right right right right right right right right right", "[correct]",
		"After the test bead comes this page: enter, mark what the bead shows, and it names the one setting to " +
			"change."},
	{toExampleCard + "g", "word:", "g or F3 explains a word of the trade on any screen: what it is, its unit, " +
		"where the word comes from. Type to find another."},
	{toExampleCard + "p left left left", "[book]", "The book keeps a card by a name, with its test beads. Nothing " +
		"is kept but what you keep."},
	{toExampleCard + "p left left left left left", "[practice]", "To practise: beads in a simulated booth, no wire " +
		"spent. p opens it now, enter leads to your own sheet. This walk: page walk."},
}
