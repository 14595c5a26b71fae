package tables

// Sight is something that a test bead shows, with a drawing in characters.
type Sight struct {
	ID, Name string
	Drawing  []string
}

// Sights are in the order in which a welder looks: first at the arc, then at the bead, then at its ends and
// faces.
var Sights = Rows[Sight]{
	{"rolled-edge", "rolled edge, the bead sits on top", []string{
		"          .oooo.",
		"==========oooooo)",
		"==========.oooo.",
		"========================"}},
	{"thin-wide", "thin flat bead, wide bluing", []string{
		"",
		"==========oo..",
		"==========oooooooo.....",
		"========================"}},
	{"zinc-gone-behind", "zinc gone on the back face", []string{
		"==========ooo",
		"==========ooooo",
		"========================",
		"      x x x x x x x"}},
	{"burn-through", "hole burnt through the sheet", []string{
		"==========oo",
		"==========ooo",
		"============     =======",
		"             \\o/"}},
	{"edges-melted", "sheet's edge melted away", []string{
		"=======.",
		"========\\__oooo",
		"          ooooooo",
		"========================"}},
	{"undercut", "undercut: a groove along the toe", []string{
		"          .oo.",
		"==========oooo.",
		"==========ooooo.",
		"===============\\_/======"}},
	{"spatter", "spatter, harsh arc", []string{
		"   .  *      .   *",
		"=========ooo   .    *",
		"=========ooooo  *  .",
		"========================"}},
	{"stubbing", "the wire stubs and pushes the gun", []string{
		"          ||",
		"          || ^",
		"          ||",
		"========================"}},
	{"burn-back", "wire burns back to the tip", []string{
		"        [    ]",
		"        [____]",
		"          O",
		"========================"}},
	{"pores", "pores, pinholes, popping", []string{
		"========================",
		" oo.ooo oooo.oo oo.oooo",
		" ooooo.oo oooo.oooo ooo",
		"========================"}},
	{"crack", "crack along the bead or beside it", []string{
		"========================",
		" oooooooooooooooooooooo",
		" __/\\___/\\/\\____/\\___/\\",
		"========================"}},
	{"drops-through", "metal drops through the gap", []string{
		"=========     =========",
		"         \\ooo/",
		"           o",
		"           O"}},
	{"spots-apart", "spots do not run into one another", []string{
		"========================",
		"  (oo)   (oo)   (oo)",
		"  (oo)   (oo)   (oo)",
		"========================"}},
	{"crater", "crater at the end", []string{
		"========================",
		" oooooooooooooooo/    \\",
		" oooooooooooooooo\\____/",
		"========================"}},
	{"good", "good: both toes washed in, base solid", []string{
		"==========o.",
		"==========oooo.",
		"==========oooooo..",
		"========================"}},
}
