package tui

import (
	"go/scanner"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/tui/canvas"
)

// drawn are the characters outside ASCII in the golden screens and in the literals of the drawing code, each with a
// file that has it.
func drawn(t *testing.T) map[rune]string {
	t.Helper()
	found := map[rune]string{}
	note := func(text, file string) {
		for _, r := range text {
			if r >= 0x7f {
				found[r] = file
			}
		}
	}
	err := filepath.WalkDir(".", func(name string, d fs.DirEntry, err error) error {
		code := strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") && name != "signs.go"
		if err != nil || d.IsDir() || !code && !strings.HasSuffix(name, ".golden") {
			return err
		}
		text, err := os.ReadFile(name)
		if !code {
			note(string(text), name)
			return err
		}
		var s scanner.Scanner
		s.Init(token.NewFileSet().AddFile(name, -1, len(text)), text, nil, 0)
		for {
			switch _, tok, lit := s.Scan(); tok {
			case token.EOF:
				return err
			case token.STRING, token.CHAR:
				note(lit, name)
			}
		}
	})
	if err != nil || len(found) < 40 {
		t.Fatal(len(found), err)
	}
	return found
}

// The characters that a terminal is asked to show are those that the screens draw, and each takes one column by the
// screens' own count.
func TestSignsAreWhatTheScreensDraw(t *testing.T) {
	listed := map[rune]int{}
	for _, r := range Signs() {
		if listed[r]++; listed[r] > 1 || ansi.StringWidth(string(r)) != 1 {
			t.Errorf("%c is listed %d times, %d wide", r, listed[r], ansi.StringWidth(string(r)))
		}
	}
	for r, file := range drawn(t) {
		if braille := r >= 0x2800 && r < 0x2900; !braille && listed[r] == 0 {
			t.Errorf("%c %U of %s is not listed", r, r, file)
		}
	}
}

// Samples fit beside their names into 80 columns, in every theme. Characters that the Linux console lacks are not shown
// there.
func TestSamples(t *testing.T) {
	for _, theme := range [...]Theme{canvas.ThemeAuto, canvas.ThemeDark, canvas.ThemeLight, canvas.ThemeContrast,
		canvas.ThemeNone} {
		for _, coarse := range [...]bool{false, true} {
			for _, s := range Samples(Options{Theme: theme, Profile: colorprofile.ANSI256}, theme != canvas.ThemeLight,
				coarse) {
				all := strings.Join(append([]string{s.Look, "if not: " + s.Else}, s.Lines...), "\n")
				for line := range strings.Lines(all) {
					if n := ansi.StringWidth(line); n > 80-13 {
						t.Errorf("%s: %d columns: %s", s.Name, n, line)
					}
				}
				if s.Look == "" || s.Else == "" || len(s.Lines) == 0 || coarse && strings.ContainsAny(all, "▖▟⣿") {
					t.Errorf("%s on %s, coarse %v:\n%s", s.Name, theme, coarse, all)
				}
				if coloured := strings.Contains(all, "\x1b[38;5;"); s.Name == "colours" &&
					coloured == (theme == canvas.ThemeNone) {
					t.Errorf("%s has colours: %v", theme, coloured)
				}
			}
		}
	}
}
