package quantity

import "strings"

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
		if seconds != "" && letter(seconds[len(seconds)-1]) && span(along, 0) > 0 {
			return seconds, along, true
		}
	}
	return "", "", false
}

// pace is a length over a time, mm/s. A time of zero gives a speed that is out of every range.
func (sp *spec) pace(text, seconds, along string) (float64, error) {
	t, err := Read(FieldDuration, seconds)
	if err != nil {
		return 0, sp.refuse(text, "has no seconds before the stroke")
	}
	l, err := Read(FieldLength, along)
	if err != nil {
		return 0, sp.refuse(text, "has no length after the stroke")
	}
	if !sp.holds(l / t) {
		return 0, sp.outside(text)
	}
	return l / t, nil
}
