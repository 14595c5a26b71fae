package docs

// proves says for each quantity what its rows show and what they do not.
var proves = map[string]string{
	"current from wire feed, copper-base wires": "Spray runs at more current than is computed at the same feed. The " +
		"balance's constant is that of short arcs; hotter drops in spray would explain it, which nothing here shows. " +
		"No row is of a short or a pulsed arc.",
	"current from wire feed, steel wire": "The balance of heat in the wire holds over size and feed for steel. A rule " +
		"of thumb has no scatter of its own; it says nothing of bronze.",
	"strength of a fillet, throat": "Three tests tell the size and hardly the scatter. They are of CuAl7 on plate; " +
		"nothing says that another wire or thin sheet follows.",
	"strength of a fillet, bond": "Five tests of one laboratory lie in each other's band. It holds no other wire, " +
		"sheet or coat.",
	"tensile strength of a deposit": "The value is the guide minimum of a standard, not a typical deposit: it is low " +
		"on purpose, and its band is that of the number's rounding.",
	"melting range of a wire": "Sources differ by more than their digits, since alloys of one name differ. It says " +
		"nothing of what a fast cooling does.",
	"pull of a seam": "Two published factors for welds in steel lie in the band. None is of arc brazing.",
	"zinc oxide into the air": "The span of the source lies in the band. The share of the zinc that becomes fume, 10 " +
		"to 80 %, is assumed: with all of it counted, and half of what only melts, the rate was 4 to 17 times the " +
		"source's. It is no estimate of exposure, and which hood it takes is judged with the band's high end.",
}

// untested are the results that no outside value has tested, with what a shop could measure to test them.
var untested = [][2]string{
	{"bead width, leg and throat", "cut a bead across, measure the width and both legs with a caliper, and write the " +
		"setting, the wire feed in 10 s and the travel beside it"},
	{"wetting angle", "photograph the polished cut and measure the angle at both toes"},
	{"half-width of the burnt or melted zinc, mm", "wipe the soot off and measure from the toe to where the coat is " +
		"whole, on both faces"},
	{"peak temperature at the toe and on the back", "a thermocouple of 0.25 mm, spot welded 3 mm beside the seam"},
	{"whether a gap is bridged, and how far a root sags", "lay beads over gaps of 0.5, 1, 1.5 and 2 mm and cut them"},
	{"the rhythm of a timed arc", "film it with a second hand in view, count on and off, and note where it fell " +
		"through"},
	{"bead in a position, and what drips", "lay the same bead flat, vertical and overhead and weigh what fell"},
	{"distortion of brazed sheet", "measure the bow of a strip of 300 mm before and after"},
	{"arc efficiency of this process", "a bead into a plate that is dropped into a bucket of water of known weight"},
	{"chance that a setting is good", "keep every trial with its verdict (`book trial`): in ten at 80 %, eight are " +
		"good"},
}

// notAtHand are published results that would test the program, but whose figures have not been read: no row is made up.
var notAtHand = [][2]string{
	{"Materials 18(10):2339, rows L06, L07, L08, L12 and L13", "force, throat and length of five of the paper's " +
		"thirteen fillets, and which of them broke where. The other eight are below. The paper's spans on the face " +
		"that broke, 320 to 380 MPa of six in the throat and 113 to 278 MPa of seven in the bond, are checked"},
	{"TRGS 528, table 2", "coat, sheet, wire and travel behind its 1 to 9 mg/s for arc brazing of coated sheet"},
}

const validationHead = `# What was computed beside what was measured

Made by tests: ` + "`go test ./calc_test -update`" + ` writes [validation.json](validation.json), then
` + "`go test ./docs -run Validation " +
	"-update`" + ` this page. How a source is known: *read*; *memory*, where the document
is not at hand, with how sure; *practice*, a rule of the trade without a document.

## What nothing outside has ever tested

No document has these for arc brazing of sheet with its setting beside it. What is shown of them is computed, with a
band that rests on the inputs' own. A shop can measure them. What its own book holds (` + "`book reading`" + `,
` + "`book trial`" + ` with ` + "`--measured-width`, `--measured-leg`, `--measured-throat`, " +
	"`--measured-zinc`" + `) makes
the same comparison for its own booth: ` + "`brazebooth book validation`" + `.

`

const validationNotAtHand = `
## Published, and not at hand

These would test the program. Whoever has the documents can add the rows to ` + "`tables/strength.go`" + ` and to
` + "`calc_test/measured_test.go`" + `.

`

const validationMeasured = `
## By quantity

The ratio is computed over outside. Coverage is how many outside values lie in the computed 95 % band, with the
binomial 95 % interval of that share (Clopper and Pearson): few rows prove little.

![Computed over outside, with bands](validation.svg)

| | quantity | rows | mean ratio | scatter | in the band | what it proves and what not |
|---|---|---|---|---|---|---|
`
