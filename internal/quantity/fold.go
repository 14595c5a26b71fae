package quantity

import "strings"

// folds are the spellings that mean the same. A sign that could join two runs of digits into another
// number is never dropped: a degree sign becomes letters, a vulgar fraction stands between blanks, and
// a power counts only behind its unit.
var folds = [...][2]string{
	{"″", `"`}, {"”", `"`}, {"“", `"`}, {"′′", `"`}, {"''", `"`}, {"′", "'"}, {"’", "'"},
	{"°", "deg"}, {"º", "deg"}, {"℃", "degc"}, {"℉", "degf"}, {"№", "#"},
	{"µ", "u"}, {"μ", "u"}, {"m²", "m2"}, {"m³", "m3"}, {"t³", "t3"},
	{"½", " 1/2 "}, {"¼", " 1/4 "}, {"¾", " 3/4 "}, {"⅛", " 1/8 "}, {"⅜", " 3/8 "}, {"⅝", " 5/8 "}, {"⅞", " 7/8 "},
	{"⁄", "/"}, {"∕", "/"}, {"−", "-"}, {"–", "-"}, {"‐", "-"}, {"‑", "-"},
}

// fold brings text to one spelling: lower case, single blanks, ASCII signs.
func fold(text string) string {
	s := strings.ToLower(text)
	if !ascii(s) || strings.Contains(s, "''") {
		for i := range folds {
			s = strings.ReplaceAll(s, folds[i][0], folds[i][1])
		}
	}
	return strings.Join(strings.Fields(s), " ")
}

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}
