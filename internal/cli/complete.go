package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/calc/advice"
	"brazebooth/internal/address"
	"brazebooth/internal/choice"
	"brazebooth/internal/config"
	"brazebooth/tables"
)

const (
	noFiles = cobra.ShellCompDirectiveNoFileComp
	ordered = noFiles | cobra.ShellCompDirectiveKeepOrder
)

// completing reports whether a shell asks for completions. Only then are completers added to the commands, so that no
// other command starts slower.
func completing(args []string) bool {
	return len(args) > 0 && (args[0] == cobra.ShellCompRequestCmd || args[0] == cobra.ShellCompNoDescRequestCmd)
}

// hidden replaces, on a command line that is completed, an address that nobody may see.
const hidden = "./address"

// hide replaces servers' addresses in a command line that a shell wants completed, except in the word that is being
// typed, because the library prints the whole line when one of its flags is wrong. The book's address is kept in
// d.hidden.
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

// teach adds its completer to every command and flag of a tree.
func teach(cmd *cobra.Command, words, flags map[string]cobra.CompletionFunc) {
	for _, sub := range cmd.Commands() {
		teach(sub, words, flags)
	}
	path := strings.TrimPrefix(cmd.CommandPath(), "brazebooth ")
	if f, ok := words[path]; ok {
		cmd.ValidArgsFunction = f
	} else if cmd.ValidArgsFunction == nil && !cmd.HasSubCommands() {
		cmd.ValidArgsFunction = cobra.NoFileCompletions
	}
	cmd.LocalFlags().VisitAll(func(f *pflag.Flag) {
		complete := flags[path+" --"+f.Name]
		if complete == nil {
			complete = flags[f.Name]
		}
		if complete != nil {
			_ = cmd.RegisterFlagCompletionFunc(f.Name, complete) // fails only for an unknown flag
		}
	})
}

// wordCompleters complete the arguments of a command, by its path.
func (d *Deps) wordCompleters() map[string]cobra.CompletionFunc {
	card, record := d.kept("card", false), d.kept("", false)
	list := map[string]cobra.CompletionFunc{
		"gauge": fixed(gaugeNumbers()), "tables": once(fixed(tableNames())), "words": once(fixed(termWords())),
		"batch": files("csv", "tsv", "jsonl", "ndjson"), "book import": files("jsonl"), "book merge": files("db"),
		"book export": anyFile, "book backup": anyFile, "completion": once(fixed(shells[:])),
		"config set": completeSetting, "config unset": once(fixed(settingNames())), "book history": record,
		"book delete": record, "book restore": d.kept("", true), "book person": d.kept("person", false),
	}
	for _, name := range [...]string{"show", "edit", "recompute", "trial", "print", "procedure", "compare"} {
		list["book "+name] = card
	}
	return list
}

// flagCompleters complete the value of a flag; the key is its name, or its command and name.
func (d *Deps) flagCompleters() map[string]cobra.CompletionFunc {
	source := d.kept("source", false)
	list := map[string]cobra.CompletionFunc{
		sourceName: source, "book source --name": source, "lot": d.kept("spool", false), "kind": fixed(kinds()),
		"seen": separated(sights()), "show": separated(append([]string{"all"}, advice.ComputedPages()...)),
		"hazard":  separated(append([]string{"none"}, tables.HazardWords()...)),
		"format":  fixed([]string{"csv\tone job on each line, the names above", "jsonl\tone object on each line"}),
		"paper":   fixed([]string{"a4", "letter"}),
		"verdict": fixed([]string{"good", "acceptable", "bad"}),
	}
	for _, k := range config.Keys() {
		if k.Values != nil {
			list[k.Name] = fixed(k.Values)
		}
	}
	for _, c := range choice.All() {
		rows := c.Standard(&choice.Present{})
		switch {
		case list[c.Name] != nil:
		case rows == nil:
			list[c.Name] = told(c.Usage)
		default:
			list[c.Name] = fixed(column(rows, func(r *choice.Row) string {
				return strings.TrimSuffix(r.ID+"\t"+r.Tip, "\t")
			}))
		}
	}
	return list
}

// fixed completes from a list; a tab separates a value from its description.
func fixed(list []string) cobra.CompletionFunc {
	return func(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
		return fitting(list, begun), ordered
	}
}

// fitting are the values that begin with what was typed.
func fitting(list []string, begun string) []string {
	var out []string
	for _, v := range list {
		if len(v) >= len(begun) && strings.EqualFold(v[:len(begun)], begun) {
			out = append(out, v)
		}
	}
	return out
}

func once(f cobra.CompletionFunc) cobra.CompletionFunc {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, noFiles
		}
		return f(cmd, args, begun)
	}
}

// told offers no values and shows a flag's usage.
func told(usage string) cobra.CompletionFunc {
	return cobra.FixedCompletions(cobra.AppendActiveHelp(nil, usage), noFiles)
}

// separated completes the last value of a list with commas.
func separated(list []string) cobra.CompletionFunc {
	return func(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
		before := begun[:strings.LastIndexByte(begun, ',')+1]
		out := fitting(list, begun[len(before):])
		for i := range out {
			out[i] = before + out[i]
		}
		return out, ordered | cobra.ShellCompDirectiveNoSpace
	}
}

func files(endings ...string) cobra.CompletionFunc {
	return cobra.FixedCompletions(endings, cobra.ShellCompDirectiveFilterFileExt)
}

var anyFile = cobra.FixedCompletions(nil, cobra.ShellCompDirectiveDefault)

func completeHelp(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	about, rest, err := cmd.Root().Find(args)
	if err != nil || len(rest) > 0 {
		return nil, noFiles
	}
	return fitting(commandNames(about), begun), noFiles
}

func completeSetting(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return fitting(settingNames(), begun), ordered
	}
	k, err := config.Find(args[0])
	switch {
	case err != nil || len(args) > 1:
		return nil, noFiles
	case k.Values == nil:
		return told(k.Usage)(cmd, args, begun)
	}
	return fitting(k.Values, begun), ordered
}
