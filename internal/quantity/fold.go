package quantity

import "strings"

// folds brings the spellings that mean the same to one. A sign that could join two runs of digits into another number
// is never dropped: a degree sign becomes letters, a vulgar fraction stands between blanks, and a power counts only
// after its unit.
var folds = strings.NewReplacer(
	"″", `"`, "”", `"`, "“", `"`, "′′", `"`, "''", `"`, "′", "'", "’", "'",
	"°", "deg", "º", "deg", "℃", "degc", "℉", "degf", "№", "#",
	"µ", "u", "μ", "u", "m²", "m2", "m³", "m3", "t³", "t3",
	"½", " 1/2 ", "¼", " 1/4 ", "¾", " 3/4 ", "⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ",
	"⁄", "/", "∕", "/", "−", "-", "–", "-", "‐", "-", "‑", "-",
)

// fold brings text to one spelling: lower case, single blanks, ASCII signs.
func fold(text string) string {
	return strings.Join(strings.Fields(folds.Replace(strings.ToLower(text))), " ")
}
