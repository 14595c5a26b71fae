package canvas

// spelling is a colour: one of the 240 fixed colours of the 256, and one of the sixteen; "" is none. Terminals with all
// colours also get the fixed ones: these look the same there, a run of ink is up to ten bytes shorter, and only one
// palette has to be tested. Colours 16 to 21 are not used, because common colour schemes redefine them.
type spelling struct{ indexed, ansi string }

// The palettes: two themes, each for dark and for light backgrounds.
const (
	onDark = iota
	onLight
	contrastOnDark
	contrastOnLight
	palettes
)

// tone is a role's colour in each palette.
type tone [palettes]spelling

// Black and white as text on backgrounds.
const black, white = "16", "231"

// tones are the colours of the roles. palette_test.go checks their contrast, and how far apart they are for
// colour-deficient eyes.
var tones = func() (t [roles]tone) {
	t[Text] = tone{contrastOnDark: {white, "15"}, contrastOnLight: {black, "0"}}
	t[Quiet] = tone{{"248", ""}, {"240", ""}, {"254", "15"}, {"236", "0"}}
	t[Rule] = tone{{"240", "8"}, {"247", "8"}, {"250", "15"}, {"238", "0"}}
	t[Accent] = tone{{"173", ""}, {"130", ""}, {"222", ""}, {"52", ""}}
	t[OnAccent] = tone{{black, ""}, {white, ""}, {black, ""}, {white, ""}}
	t[ChipGround] = tone{{"236", ""}, {"254", ""}, {"234", ""}, {"255", ""}}
	for s, c := range stateTones {
		t[stateInk+Role(s)], t[stateOn+Role(s)], t[stateGround+Role(s)] = c.ink, c.on, c.ground
	}
	for l, c := range landTones {
		t[landInk+Role(l)], t[landOn+Role(l)] = c.ground, c.on
	}
	t[Cold.ground()][onDark].indexed = "69" // bluer than small letters can be
	for p, c := range partTones {
		t[partInk+Role(p)] = c
	}
	return t
}()

// pair is one of the sixteen colours for dark and one for light backgrounds.
type pair [2]string

// lit is a state whose colour as text is also its background. on is the colour of the text on it, with sixteen colours.
func lit(ink tone, ground, on pair) stateTone {
	s := stateTone{ink: ink, ground: ink, on: tone{{black, on[0]}, {white, on[1]}, {black, on[0]}, {white, on[1]}}}
	for i := range s.ground {
		s.ground[i].ansi = ground[i%2]
	}
	return s
}

type stateTone struct{ ink, ground, on tone }

var stateTones = [states]stateTone{
	Good: lit(tone{{"79", "10"}, {"23", ""}, {"40", "10"}, {"23", "0"}}, pair{"2", "2"}, pair{"0", "0"}),
	Marginal: { // the colour of GOOD, on a background that can hardly be seen
		ink:    tone{{"79", "10"}, {"23", ""}, {"40", "10"}, {"23", "0"}},
		ground: tone{{"238", "0"}, {"252", "0"}, {"234", "0"}, {"252", "0"}},
		on:     tone{{"79", "10"}, {"23", "10"}, {"40", "10"}, {black, "10"}},
	},
	Cold:      lit(tone{{"105", "14"}, {"26", "4"}, {"147", "14"}, {"57", "4"}}, pair{"6", "4"}, pair{"0", "15"}),
	Hot:       lit(tone{{"221", "11"}, {"94", ""}, {"229", "11"}, {"52", "0"}}, pair{"11", "11"}, pair{"0", "0"}),
	Burns:     lit(tone{{"203", "9"}, {"88", "1"}, {"217", "15"}, {"124", "0"}}, pair{"1", "1"}, pair{"15", "15"}),
	Outside:   lit(tone{{"189", "13"}, {"53", "5"}, {"225", "15"}, {"54", "0"}}, pair{"5", "5"}, pair{"15", "15"}),
	NotJudged: lit(tone{{"248", "7"}, {"236", ""}, {"254", "15"}, {"236", "0"}}, pair{"7", "7"}, pair{"0", "0"}),
	Stop:      lit(tone{{"203", "9"}, {"88", "1"}, {"217", "15"}, {"124", "0"}}, pair{"1", "1"}, pair{"15", "15"}),
}

// landTones: dark lands have white words, light lands black ones. More margin is lighter on dark backgrounds and darker
// on light ones.
var landTones = [lands]struct{ ground, on tone }{
	LandCold:    landTone(spelling{"24", "4"}, spelling{"147", "14"}, spelling{white, "15"}, spelling{black, "0"}),
	LandHot:     landTone(spelling{"94", "3"}, spelling{"229", "11"}, spelling{white, "0"}, spelling{black, "0"}),
	LandBurns:   landTone(spelling{"52", "1"}, spelling{"210", "9"}, spelling{white, "15"}, spelling{black, "0"}),
	LandOutside: landTone(spelling{"238", "8"}, spelling{"240", "8"}, spelling{white, "15"}, spelling{white, "15"}),
	LandGood1:   landTone(spelling{"29", "2"}, spelling{"122", "10"}, spelling{white, "0"}, spelling{black, "0"}),
	LandGood2:   landTone(spelling{"36", "2"}, spelling{"79", "10"}, spelling{black, "0"}, spelling{black, "0"}),
	LandGood3:   landTone(spelling{"79", "10"}, spelling{"29", "2"}, spelling{black, "0"}, spelling{white, "0"}),
}

// landTone is a land on dark and on light backgrounds, with the words on it, the same in both themes.
func landTone(dark, light, wordsDark, wordsLight spelling) struct{ ground, on tone } {
	return struct{ ground, on tone }{tone{dark, light, dark, light}, tone{wordsDark, wordsLight, wordsDark, wordsLight}}
}

var partTones = [parts]tone{
	partFirst:   {{"246", "7"}, {"247", "7"}, {"246", "7"}, {"247", "7"}},
	partSecond:  {{"242", "8"}, {"243", "8"}, {"242", "8"}, {"243", "8"}},
	partBead:    {{"255", "15"}, {"235", "0"}, {white, "15"}, {black, "0"}},
	partBoiled:  {{"221", "11"}, {"94", "3"}, {"221", "11"}, {"94", "3"}},
	partMelted:  {{"136", "3"}, {"179", "11"}, {"136", "3"}, {"179", "11"}},
	partBacking: {{"238", "8"}, {"252", "7"}, {"238", "8"}, {"252", "7"}},
	partBluing:  {{"146", "12"}, {"104", "4"}, {"146", "12"}, {"104", "4"}},
	partWire:    {{"255", "15"}, {"235", "0"}, {white, "15"}, {black, "0"}},
	partTip:     {{"246", "7"}, {"247", "7"}, {"246", "7"}, {"247", "7"}},
}
