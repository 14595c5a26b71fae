package main

import (
	"os/exec"
	"strings"
	"testing"
)

// own are the project's rooms that each room may import. A room that is not listed is an error: every room has its
// layer.
var own = map[string][]string{
	"brazebooth/internal/serve": {"internal/mistake", "internal/crew", "internal/newfile", "calc/effort",
		"internal/plain", "internal/quantity", "tui"},
	"brazebooth": {"internal/program"},
	"brazebooth/internal/program": {"internal/serve", "internal/book", "internal/shop", "internal/linear", "tui",
		"internal/cli", "internal/newfile"},
	"brazebooth/tables":             {"internal/mistake", "internal/near"},
	"brazebooth/internal/joint":     {},
	"brazebooth/internal/plain":     {},
	"brazebooth/internal/address":   {},
	"brazebooth/internal/crew":      {},
	"brazebooth/internal/keep":      {"internal/crew"},
	"brazebooth/internal/newfile":   {},
	"brazebooth/internal/mistake":   {},
	"brazebooth/internal/quantity":  {"internal/mistake", "internal/plain"},
	"brazebooth/calc/section/plate": {},
	"brazebooth/calc/section":       {"calc/section/plate"},
	"brazebooth/calc/thinsheet":     {"internal/crew"},
	"brazebooth/calc/hang":          {"tables", "calc/formula"},
	"brazebooth/calc/suggest":       {"tables", "calc/formula"},
	"brazebooth/calc/formula":       {"tables"},
	"brazebooth/calc/effort":        {"calc/thinsheet"},
	"brazebooth/calc/learned":       {"internal/mistake", "internal/quantity", "tables", "calc/formula"},
	"brazebooth/calc/limit":         {},
	"brazebooth/calc/limit/grid":    {"calc/limit"},
	"brazebooth/calc": {"internal/mistake", "tables", "calc/formula", "calc/section", "calc/hang",
		"calc/effort", "calc/learned", "calc/limit", "calc/limit/grid", "calc/suggest", "calc/thinsheet",
		"internal/quantity",
		"internal/plain", "internal/crew", "internal/keep"},
	"brazebooth/calc/advice": {"internal/mistake", "tables", "calc", "calc/formula", "calc/thinsheet",
		"internal/crew"},
	"brazebooth/calc/correct": {"internal/mistake", "tables", "calc", "calc/advice", "calc/formula",
		"calc/learned", "calc/limit"},
	"brazebooth/calc/practice": {"internal/mistake", "tables", "calc", "calc/advice", "calc/correct",
		"calc/thinsheet", "internal/quantity"},
	"brazebooth/internal/report": {"calc", "calc/advice", "calc/practice", "tables", "internal/quantity",
		"internal/joint", "internal/plain", "internal/picture"},
	"brazebooth/internal/picture": {},
	"brazebooth/internal/near":    {},
	"brazebooth/internal/deep":    {}, // in tests only
	"brazebooth/internal/config": {"internal/mistake", "internal/address", "internal/newfile", "internal/near",
		"internal/plain"},
	"brazebooth/internal/choice": {"internal/mistake", "calc", "calc/formula", "tables", "internal/quantity",
		"internal/near"},
	"brazebooth/internal/batch": {"internal/mistake", "calc", "internal/crew", "internal/choice",
		"internal/near", "internal/plain", "internal/report"},
	"brazebooth/internal/book": {"calc", "calc/practice", "tables", "internal/address", "internal/crew",
		"internal/newfile", "internal/plain"},
	"brazebooth/internal/shop": {"internal/mistake", "calc", "calc/correct", "calc/formula", "calc/learned",
		"calc/practice",
		"tables", "internal/address", "internal/book", "internal/choice", "internal/near", "internal/plain",
		"internal/quantity", "internal/report"},
	"brazebooth/internal/cli": {"internal/mistake", "internal/address", "internal/book", "internal/shop",
		"calc", "calc/advice", "calc/correct", "calc/formula", "calc/practice", "tables", "internal/quantity",
		"internal/plain", "internal/report", "internal/choice", "internal/near", "internal/batch",
		"internal/config", "internal/crew", "internal/newfile"},
	"brazebooth/tui": {"internal/mistake", "calc", "calc/advice", "calc/correct", "calc/formula",
		"calc/practice", "tables", "internal/quantity", "internal/plain", "internal/report", "internal/choice",
		"internal/joint", "tui/canvas"},
	"brazebooth/tui/canvas": {"internal/joint", "internal/plain"},
	"brazebooth/internal/linear": {"internal/mistake", "internal/crew", "internal/near", "calc", "calc/advice",
		"calc/correct",
		"calc/practice", "tables", "internal/quantity", "internal/plain", "internal/report", "internal/choice"},
	"brazebooth/calc_test": {},
	"brazebooth/docs":      {},
}

// outside are the other modules that a room may import, by prefix; the standard library is always allowed.
var outside = map[string][]string{
	"brazebooth/internal/program": {"charm.land/", "github.com/charmbracelet/", "github.com/adrg/xdg",
		"golang.org/x/sys/windows"},
	"brazebooth/tui":        {"charm.land/", "github.com/charmbracelet/"},
	"brazebooth/tui/canvas": {"charm.land/lipgloss/", "github.com/charmbracelet/"},
	"brazebooth/internal/serve": {"charm.land/", "github.com/charmbracelet/", "github.com/spf13/pflag",
		"golang.org/x/crypto/ssh", "golang.org/x/time/rate",
		"github.com/pires/go-proxyproto", "github.com/VictoriaMetrics/metrics", "github.com/BurntSushi/toml"},
	"brazebooth/internal/plain":     {"github.com/charmbracelet/x/ansi"},
	"brazebooth/internal/book":      {"modernc.org/sqlite", "github.com/jackc/pgx/"},
	"brazebooth/internal/config":    {"github.com/BurntSushi/toml"},
	"brazebooth/internal/cli":       {"github.com/spf13/cobra", "github.com/spf13/pflag"},
	"brazebooth/calc":               {"gonum.org/"},
	"brazebooth/calc/formula":       {"gonum.org/"},
	"brazebooth/calc/section":       {"gonum.org/"},
	"brazebooth/calc/section/plate": {"gonum.org/"},
	"brazebooth/internal/report":    {"golang.org/x/image/", "codeberg.org/go-pdf/fpdf", "gonum.org/v1/plot"},
	"brazebooth/internal/picture":   {"gonum.org/v1/plot", "golang.org/x/image/font"},
}

// forbidden are packages of the standard library that a room must not import.
var forbidden = map[string][]string{
	"brazebooth/tables":            {"os", "net", "time"},
	"brazebooth/calc":              {"os", "net", "time"},
	"brazebooth/calc/formula":      {"os", "net", "time"},
	"brazebooth/calc/advice":       {"os", "net", "time"},
	"brazebooth/calc/correct":      {"os", "net", "time"},
	"brazebooth/calc/practice":     {"os", "net", "time"},
	"brazebooth/calc/section":      {"os", "net", "time"},
	"brazebooth/calc/thinsheet":    {"os", "net", "time"},
	"brazebooth/calc/hang":         {"os", "net", "time"},
	"brazebooth/calc/suggest":      {"os", "net", "time"},
	"brazebooth/calc/effort":       {"os", "net", "time"},
	"brazebooth/calc/learned":      {"os", "net", "time"},
	"brazebooth/calc/limit":        {"os", "net", "time"},
	"brazebooth/calc/limit/grid":   {"os", "net", "time"},
	"brazebooth/internal/quantity": {"os", "net", "time"},
	"brazebooth/internal/plain":    {"os", "net", "time"},
	"brazebooth/internal/report":   {"os", "net"}, // a page gets its date as an argument
	"brazebooth/internal/picture":  {"os", "net", "time"},
	"brazebooth/internal/choice":   {"os", "net", "time"},
	"brazebooth/internal/linear":   {"os", "net", "time"},
	"brazebooth/internal/batch":    {"os", "net", "time"}, // files and clocks belong to the command
	"brazebooth/tui":               {"os", "net"},
	"brazebooth/tui/canvas":        {"os", "net", "time"}, // the time within a beat is an argument
}

func TestLayers(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}}{{range .Imports}} {{.}}{{end}}`, "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(out)) {
		fields := strings.Fields(line)
		room, imports := fields[0], fields[1:]
		allowed, ok := own[room]
		if !ok {
			t.Errorf("%s has no layer", room)
			continue
		}
		for _, path := range imports {
			if why := refuse(room, path, allowed); why != "" {
				t.Errorf("%s imports %s: %s", room, path, why)
			}
		}
	}
}

func refuse(room, path string, allowed []string) string {
	if rest, ok := strings.CutPrefix(path, "brazebooth/"); ok {
		for _, a := range allowed {
			if rest == a {
				return ""
			}
		}
		return "not below it"
	}
	for _, f := range forbidden[room] {
		if path == f || strings.HasPrefix(path, f+"/") {
			return "this room touches neither disk, net, clock nor environment"
		}
	}
	if !strings.Contains(strings.SplitN(path, "/", 2)[0], ".") {
		return "" // standard library
	}
	for _, prefix := range outside[room] {
		if strings.HasPrefix(path, prefix) {
			return ""
		}
	}
	return "no library of this room"
}
