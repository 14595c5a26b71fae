package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/internal/address"
	"brazebooth/internal/choice"
	"brazebooth/internal/config"
	"brazebooth/tables"
)

// completer is what a shell may put at the place of a word that was begun.
type completer = func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective)

const noFiles = cobra.ShellCompDirectiveNoFileComp

// completing reports whether a shell asks, and not a person: only then the tree learns what completes it, so that no
// command starts slower for it.
func completing(args []string) bool {
	return len(args) > 0 && (args[0] == cobra.ShellCompRequestCmd || args[0] == cobra.ShellCompNoDescRequestCmd)
}

// hidden stands on a command line that is completed for an address that nobody may see.
const hidden = "./address"

// hide takes servers' addresses out of a command line that a shell wants completed, but for the word that is being typed: the
// library prints the whole line where a flag of it is wrong. The book's is kept aside.
func (d *Deps) hide(args []string) []string {
	args = slices.Clone(args)
	for i := 1; i < len(args)-1; i++ {
		flag, value, joined := strings.Cut(args[i], "=")
		if !joined || !strings.HasPrefix(flag, "-") {
			flag, value = args[i-1], args[i]
		}
		if !address.Looks(value) {
			continue
		}
		if flag == "--book" {
			d.hidden = value
		}
		args[i] = strings.Replace(args[i], value, hidden, 1)
	}
	return args
}

// teach gives every command and flag of a tree what completes it.
func (d *Deps) teach(cmd *cobra.Command) {
	words := d.wordCompleters()
	flags := d.flagCompleters()
	var walk func(*cobra.Command)
	walk = func(c *cobra.Command) {
		for _, sub := range c.Commands() {
			walk(sub)
		}
		if f, ok := words[strings.TrimPrefix(c.CommandPath(), "brazebooth ")]; ok {
			c.ValidArgsFunction = f
		} else if c.ValidArgsFunction == nil && !c.HasSubCommands() {
			c.ValidArgsFunction = cobra.NoFileCompletions
		}
		learn := func(f *pflag.Flag) {
			name := f.Name
			if of := strings.TrimPrefix(c.CommandPath()+" --"+name, "brazebooth "); flags[of] != nil {
				name = of
			}
			if complete := flags[name]; complete != nil {
				_ = c.RegisterFlagCompletionFunc(f.Name, complete) // it fails only for a flag that is not there
			}
		}
		c.LocalFlags().VisitAll(learn)
	}
	walk(cmd)
}

// wordCompleters complete what stands behind a command.
func (d *Deps) wordCompleters() map[string]completer {
	card, record := d.kept("card", false), d.kept("", false)
	list := map[string]completer{
		"gauge": fixed(gaugeNumbers()), "tables": once(fixed(tableNames())), "words": once(fixed(termWords())),
		"batch": files("csv", "tsv", "jsonl", "ndjson"), "book import": files("jsonl"), "book merge": files("db"),
		"book export": anyFile, "book backup": anyFile,
		"config set": completeSetting, "config unset": once(fixed(settingNames())),
		"completion":   once(fixed(shells[:])),
		"book history": record, "book delete": record, "book restore": d.kept("", true), "book person": d.kept("person", false),
	}
	for _, name := range [...]string{"show", "edit", "recompute", "trial", "print", "procedure", "compare"} {
		list["book "+name] = card
	}
	return list
}

// flagCompleters complete the value of a flag by its name, or by its command and name.
func (d *Deps) flagCompleters() map[string]completer {
	list := map[string]completer{
		"power-source": d.kept("source", false), "book source --name": d.kept("source", false), "lot": d.kept("spool", false),
		"seen": parted(sights()), "show": parted(pageNames()), "hazard": parted(append([]string{"none"}, tables.HazardWords()...)),
		"format": fixed([]string{"csv\tone job on each line, the names above", "jsonl\tone object on each line"}),
		"paper":  fixed([]string{"a4", "letter"}), "kind": fixed(kinds()), "verdict": fixed([]string{"good", "acceptable", "bad"}),
	}
	for _, k := range config.Keys() {
		if k.Values != nil {
			list[k.Name] = fixed(k.Values)
		}
	}
	for i := range choice.All() {
		c := &choice.All()[i]
		rows := c.Standard(&choice.Present{})
		switch {
		case list[c.Name] != nil:
		case rows == nil:
			list[c.Name] = told(c.Usage)
		default:
			list[c.Name] = fixed(completions(rows))
		}
	}
	return list
}

// fixed completes by a list; behind a tab stands what a value is.
func fixed(list []string) completer {
	return func(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
		return fitting(list, begun), noFiles | cobra.ShellCompDirectiveKeepOrder
	}
}

// fitting are the values that begin like what was typed.
func fitting(list []string, begun string) []string {
	var out []string
	for _, v := range list {
		if len(v) >= len(begun) && strings.EqualFold(v[:len(begun)], begun) {
			out = append(out, v)
		}
	}
	return out
}

// once completes the first word alone.
func once(f completer) completer {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, noFiles
		}
		return f(cmd, args, begun)
	}
}

// told has no values to offer and says what is wanted.
func told(usage string) completer {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return cobra.AppendActiveHelp(nil, usage), noFiles
	}
}

// parted completes the last of some values with commas between them.
func parted(list []string) completer {
	return func(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
		before := begun[:strings.LastIndexByte(begun, ',')+1]
		out := fitting(list, begun[len(before):])
		for i := range out {
			out[i] = before + out[i]
		}
		return out, noFiles | cobra.ShellCompDirectiveNoSpace | cobra.ShellCompDirectiveKeepOrder
	}
}

// files completes by files of some endings.
func files(endings ...string) completer {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return endings, cobra.ShellCompDirectiveFilterFileExt
	}
}

func anyFile(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return nil, cobra.ShellCompDirectiveDefault
}

// completeHelp completes the words of a command's path.
func completeHelp(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	about, rest, err := cmd.Root().Find(args)
	if err != nil || len(rest) > 0 {
		return nil, noFiles
	}
	return fitting(commandNames(about), begun), noFiles
}

// completeSetting completes a key, then its values.
func completeSetting(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	switch len(args) {
	case 0:
		return fitting(settingNames(), begun), noFiles | cobra.ShellCompDirectiveKeepOrder
	case 1:
		if k, err := config.Find(args[0]); err == nil {
			if k.Values == nil {
				return cobra.AppendActiveHelp(nil, k.Usage), noFiles
			}
			return fitting(k.Values, begun), noFiles | cobra.ShellCompDirectiveKeepOrder
		}
	}
	return nil, noFiles
}
