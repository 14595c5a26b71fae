package quantity

import "strings"

// ParseTravel reads a travel, 0.3 to 60 mm/s, also as the seconds counted along a length: "16s/100mm",
// "17 s/4in".
func ParseTravel(text string) (Speed, error) {
	if seconds, along, ok := counted(text); ok {
		return pace(text, seconds, along)
	}
	return readAs[Speed](FieldTravel, text)
}

// counted splits text of the form "16 s / 100 mm" at its stroke, which has a letter before it and a digit or a
// point behind; "6 mm/s" and "3/32" have not.
func counted(text string) (seconds, along string, ok bool) {
	if len(text) > longest {
		return "", "", false
	}
	s := strings.ReplaceAll(fold(text), " per ", "/")
	for i := range len(s) {
		if s[i] != '/' {
			continue
		}
		seconds, along = strings.TrimSpace(s[:i]), strings.TrimSpace(s[i+1:])
		if seconds != "" && isLetter(seconds[len(seconds)-1]) && span(along, 0) > 0 {
			return seconds, along, true
		}
	}
	return "", "", false
}

func isLetter(b byte) bool { return b >= 'a' && b <= 'z' }

// pace is a length over a time. A time of zero gives a speed that is out of every range.
func pace(text, seconds, along string) (Speed, error) {
	sp := &specs[FieldTravel]
	t, err := ParseDuration(seconds)
	if err != nil {
		return 0, sp.refuse(text, "has no seconds before the stroke")
	}
	l, err := ParseLength(along)
	if err != nil {
		return 0, sp.refuse(text, "has no length after the stroke")
	}
	v := float64(l) / float64(t)
	if !sp.holds(v) {
		return 0, sp.outside(text)
	}
	return Speed(v), nil
}
