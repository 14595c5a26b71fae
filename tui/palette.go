package tui

// Theme is a choice of colours for the screens.
type Theme string

// The themes. Auto takes the dark or the light one by the terminal's background; Contrast has a palette of its own for
// either; None has bold and plain text only.
const (
	ThemeAuto     Theme = "auto"
	ThemeDark     Theme = "dark"
	ThemeLight    Theme = "light"
	ThemeContrast Theme = "contrast"
	ThemeNone     Theme = "none"
)

// tone is a colour in three spellings: of sixteen, of 256, of all. An empty spelling is the terminal's own text colour.
// Of 256 only those from 16 on are used: the terminal may have other colours behind the first sixteen.
type tone struct{ ansi, indexed, full string }

// palette is the colours of a theme on one kind of background. Their contrast against the usual backgrounds is held by
// theme_test.go: 4.5 to 1, in the contrast palettes 7 to 1. Of sixteen colours only those are used that are readable in the
// usual palettes of terminals; what then has no colour shows its sign or its word.
type palette struct {
	plain, quiet, accent, good, watch, stop tone
	zones                                   zoneTones
	reverse                                 bool // a stop stands in reverse
}

// zoneTones are the colours of the map. They stay apart in red, green and blue blindness too; the glyphs do in any case.
type zoneTones struct{ good, cold, hot, burns, edge tone }

var darkPalette = palette{
	quiet:  tone{"", "247", "#9e9e9e"},
	accent: tone{"6", "173", "#d0935a"}, // bronze; of sixteen cyan, since their brown is too dark in some terminals
	good:   tone{"10", "114", "#87c38f"},
	watch:  tone{"11", "221", "#f2c14e"},
	stop:   tone{"9", "210", "#ff7b6f"},
	zones: zoneTones{
		good:  tone{"10", "35", "#00af5f"},
		cold:  tone{"14", "153", "#afd7ff"},
		hot:   tone{"11", "220", "#ffd700"},
		burns: tone{"13", "175", "#d787af"},
		edge:  tone{"", "231", "#ffffff"},
	},
}

var lightPalette = palette{
	quiet:  tone{"", "240", "#5c5c5c"},
	accent: tone{"", "94", "#8a5210"},
	good:   tone{"", "22", "#1f6f3a"},
	watch:  tone{"", "88", "#9a4d00"},
	stop:   tone{"1", "160", "#b3261e"},
	zones: zoneTones{
		good:  tone{"", "23", "#005f5f"},
		cold:  tone{"4", "27", "#005fff"},
		hot:   tone{"", "58", "#5f5f00"},
		burns: tone{"1", "162", "#d70087"},
		edge:  tone{"", "16", "#000000"},
	},
}

var contrastDarkPalette = palette{
	plain:  tone{"15", "231", "#ffffff"},
	quiet:  tone{"15", "254", "#e4e4e4"},
	accent: tone{"14", "222", "#ffd787"},
	good:   tone{"10", "120", "#87ff87"},
	watch:  tone{"11", "227", "#ffff5f"},
	stop:   tone{"15", "217", "#ffafaf"},
	zones: zoneTones{
		good:  tone{"10", "46", "#00ff00"},
		cold:  tone{"14", "195", "#d7ffff"},
		hot:   tone{"11", "229", "#ffffaf"},
		burns: tone{"15", "219", "#ffafff"},
		edge:  tone{"15", "251", "#c6c6c6"},
	},
	reverse: true,
}

var contrastLightPalette = palette{
	plain:  tone{"0", "16", "#000000"},
	quiet:  tone{"0", "236", "#303030"},
	accent: tone{"4", "52", "#5a3000"},
	good:   tone{"0", "22", "#00450f"},
	watch:  tone{"0", "88", "#5c2e00"},
	stop:   tone{"0", "88", "#7a0000"},
	zones: zoneTones{
		good:  tone{"0", "22", "#005f00"},
		cold:  tone{"4", "17", "#00005f"},
		hot:   tone{"0", "52", "#5f0000"},
		burns: tone{"0", "90", "#870087"},
		edge:  tone{"0", "16", "#000000"},
	},
	reverse: true,
}

// paletteOf picks the colours of a theme on a background.
func paletteOf(kind Theme, dark bool) *palette {
	switch {
	case kind == ThemeNone:
		return &palette{}
	case kind == ThemeContrast && dark:
		return &contrastDarkPalette
	case kind == ThemeContrast:
		return &contrastLightPalette
	case kind == ThemeDark, kind != ThemeLight && dark:
		return &darkPalette
	}
	return &lightPalette
}
