package cli

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"brazebooth/internal/serve"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

//go:generate go test . -run ManPages -update

var update = flag.Bool("update", false, "write docs/man anew from the commands' help")

const manDir = "../../docs/man"

// The manual is generated from the commands' own help, so that both say the same. A test generates it, so that the
// program does not contain the generator.
func TestManPagesAreUpToDate(t *testing.T) {
	pages := manPages(New(Deps{Serve: serve.Bind(serve.Deps{})}))
	if *update {
		if err := os.RemoveAll(manDir); err != nil {
			t.Fatal(err)
		}
		if err := os.MkdirAll(manDir, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for name, text := range pages {
		file := filepath.Join(manDir, name)
		if *update {
			if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if b, err := os.ReadFile(file); err != nil || string(b) != text {
			t.Errorf("%s is not what the help says (%v): go generate ./internal/cli", name, err)
		}
	}
	files, err := filepath.Glob(manDir + "/*")
	if err != nil || len(files) != len(pages) {
		t.Errorf("%d files for %d pages, %v: go generate ./internal/cli", len(files), len(pages), err)
	}
}

// The manual has no fault that mandoc or groff reports.
func TestManPagesAreWellMade(t *testing.T) {
	files, err := filepath.Glob(manDir + "/*.1")
	if err != nil || len(files) == 0 {
		t.Fatal(err, len(files))
	}
	lint := []string{"mandoc", "-Tlint", "-Wwarning"}
	if _, err := exec.LookPath("mandoc"); err != nil {
		if lint = []string{"groff", "-man", "-ww", "-z", "-Kutf8"}; !there("groff") {
			t.Skip("neither mandoc nor groff is here")
		}
	}
	if out, err := exec.Command(lint[0], append(lint[1:], files...)...).CombinedOutput(); err != nil || len(out) > 0 {
		t.Errorf("%v\n%s", err, out)
	}
}

func there(program string) bool {
	_, err := exec.LookPath(program)
	return err == nil
}

// manPages are the pages by file name: one for the program, and one for each command with its subcommands.
func manPages(root *cobra.Command) map[string]string {
	pages := map[string]string{"brazebooth.1": programPage(root)}
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			pages["brazebooth-"+c.Name()+".1"] = commandPage(c)
		}
	}
	return pages
}

// roff writes a page of the manual.
type roff struct{ strings.Builder }

func (r *roff) macro(name string, args ...string) {
	r.WriteString("." + name)
	for _, a := range args {
		r.WriteString(` "` + strings.ReplaceAll(escaped(a), `"`, `\(dq`) + `"`)
	}
	r.WriteByte('\n')
}

// escaped is a text without special characters for the formatter.
func escaped(s string) string {
	return strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s)
}

// line writes a line of text so that it does not begin like a command of the formatter.
func (r *roff) line(s string) {
	s = escaped(s)
	if strings.HasPrefix(s, ".") || strings.HasPrefix(s, "'") {
		s = `\&` + s
	}
	r.WriteString(s + "\n")
}

// text writes running text; indented lines are a table and stay as they are.
func (r *roff) text(s string) {
	table, started := false, false
	for _, l := range strings.Split(strings.TrimSpace(s), "\n") {
		switch indented := strings.HasPrefix(l, "  "); {
		case l == "":
			if !table && started {
				r.WriteString(".PP\n")
			}
			continue
		case indented && !table:
			r.WriteString(".nf\n")
			table = true
		case !indented && table:
			r.WriteString(".fi\n")
			table = false
		}
		r.line(l)
		started = true
	}
	if table {
		r.WriteString(".fi\n")
	}
}

func (r *roff) head(name, short string) {
	fmt.Fprintf(r, ".TH \"%s\" \"1\" \"%s\" \"brazebooth %s\" \"brazebooth\"\n", escaped(strings.ToUpper(name)), Date,
		Version)
	r.macro("SH", "NAME")
	r.WriteString(escaped(name) + ` \- ` + escaped(short) + "\n")
}

// flags lists the flags of a command except those that all commands have.
func (r *roff) flags(c *cobra.Command) {
	c.NonInheritedFlags().VisitAll(func(f *pflag.Flag) {
		if f.Hidden || f.Name == "help" || c.HasParent() && c.Root().PersistentFlags().Lookup(f.Name) != nil {
			return
		}
		r.WriteString(".TP\n")
		name := `\fB` + escaped("--"+f.Name) + `\fR`
		if f.Value.Type() != "bool" {
			name += ` \fIVALUE\fR`
		}
		r.WriteString(name + "\n")
		usage := f.Usage
		if f.DefValue != "" && f.DefValue != "false" && f.DefValue != "[]" {
			usage += " (without it " + f.DefValue + ")"
		}
		r.line(usage)
	})
}

func (r *roff) example(c *cobra.Command) {
	if c.Example == "" {
		return
	}
	r.WriteString(".PP\n.nf\n")
	for _, l := range strings.Split(c.Example, "\n") {
		r.line(l)
	}
	r.WriteString(".fi\n")
}

func (r *roff) about(c *cobra.Command) {
	if r.text(c.Short + "."); c.Long != "" {
		r.WriteString(".PP\n")
		r.text(c.Long)
	}
}

func commandPage(c *cobra.Command) string {
	var r roff
	r.head("brazebooth-"+c.Name(), c.Short)
	r.macro("SH", "SYNOPSIS")
	r.line(useOf(c))
	r.macro("SH", "DESCRIPTION")
	if c.Long == "" {
		r.text(c.Short + ".")
	} else {
		r.text(c.Long)
	}
	if c.NonInheritedFlags().HasAvailableFlags() {
		r.macro("SH", "OPTIONS")
		r.flags(c)
	}
	if c.HasAvailableSubCommands() {
		r.macro("SH", "COMMANDS")
		for _, sub := range c.Commands() {
			r.macro("SS", useOf(sub))
			r.about(sub)
			r.flags(sub)
			r.example(sub)
		}
	}
	if c.Example != "" {
		r.macro("SH", "EXAMPLES")
		r.WriteString(strings.TrimPrefix(exampleOf(c), ".PP\n"))
	}
	r.macro("SH", "SEE ALSO")
	r.line("brazebooth(1)")
	return r.String()
}

func exampleOf(c *cobra.Command) string {
	var r roff
	r.example(c)
	return r.String()
}

// useOf is a command's usage line.
func useOf(c *cobra.Command) string {
	path := c.Use
	for p := c.Parent(); p != nil; p = p.Parent() {
		path = p.Name() + " " + path
	}
	if c.NonInheritedFlags().HasAvailableFlags() {
		path += " [options]"
	}
	return path
}

func programPage(root *cobra.Command) string {
	var r roff
	r.head("brazebooth", root.Short)
	r.macro("SH", "SYNOPSIS")
	r.line("brazebooth [command] [options]")
	r.macro("SH", "DESCRIPTION")
	r.text(root.Long)
	r.macro("SH", "COMMANDS")
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			r.WriteString(".TP\n\\fB" + escaped("brazebooth-"+c.Name()) + "\\fR(1)\n")
			r.line(c.Short)
		}
	}
	r.macro("SH", "OPTIONS")
	r.flags(root)
	r.macro("SH", "ENVIRONMENT AND SETTINGS")
	r.text("A flag overrides the environment, the environment the file config.toml in the folder for settings, and " +
		"the file the default.\n\n" + keysText())
	r.macro("SH", "FILES")
	r.text("The settings lie in brazebooth/config.toml below XDG_CONFIG_HOME, the book in brazebooth/book.db below " +
		"XDG_DATA_HOME, or where\nother systems keep such files; brazebooth doctor tells.")
	r.macro("SH", "EXIT STATUS")
	for _, s := range [...]string{"0 Answered; a stop and a refusal are answers.", "1 Could not.",
		"2 Wrong use; the message says what to type."} {
		r.WriteString(".TP\n" + s[:1] + "\n")
		r.line(s[2:])
	}
	r.macro("SH", "SEE ALSO")
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, fmt.Sprintf("brazebooth-%s(1)", c.Name()))
		}
	}
	r.line(strings.Join(names, ", "))
	return r.String()
}
