package calc_test

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// record is one part of the answers to a job: what it is, its long text if it has one, and its numbers.
type record struct{ group, text, job, value string }

type records []record

// putter adds one part of the answers to a job.
type putter func(group, text, value string)

// of adds to the answers of a job.
func (list *records) of(job string) putter {
	return func(group, text, value string) { *list = append(*list, record{group, text, job, value}) }
}

// The kinds of lines in the file. A text is written once, above the numbers of all jobs that it belongs to.
const (
	groupMark = "# "
	textMark  = "| "
	jobMark   = "\t"
)

// file is all records, sorted by group and text, so that a change of one moves no other.
func (list records) file() []byte {
	sorted := slices.Clone(list)
	slices.SortStableFunc(sorted, func(a, b record) int {
		return cmp.Or(strings.Compare(a.group, b.group), strings.Compare(a.text, b.text))
	})
	var b bytes.Buffer
	var last record
	for _, r := range sorted {
		if r.group != last.group {
			fmt.Fprintf(&b, "%s%s\n", groupMark, r.group)
		}
		if r.text != "" && (r.text != last.text || r.group != last.group) {
			fmt.Fprintf(&b, "%s%s\n", textMark, r.text)
		}
		fmt.Fprintf(&b, "%s%s: %s\n", jobMark, r.job, r.value)
		last = r
	}
	return b.Bytes()
}

// recordsIn reads what file has written.
func recordsIn(file []byte) (list records) {
	var r record
	for line := range strings.Lines(string(file)) {
		line = strings.TrimSuffix(line, "\n")
		if group, ok := strings.CutPrefix(line, groupMark); ok {
			r.group, r.text = group, ""
		} else if text, ok := strings.CutPrefix(line, textMark); ok {
			r.text = text
		} else {
			r.job, r.value, _ = strings.Cut(strings.TrimPrefix(line, jobMark), ": ")
			list = append(list, r)
		}
	}
	return list
}

// name identifies an answer.
type name struct{ group, job string }

// named are the answers by name, each with its numbers and texts.
func (list records) named() map[name]string {
	all := map[name]string{}
	for _, r := range recordsIn(list.file()) { // in one order
		all[name{r.group, r.job}] += fmt.Sprintf("  %s | %s\n", r.value, r.text)
	}
	return all
}

// namesOf are the names of both, sorted.
func namesOf(a, b map[name]string) []name {
	var both []name
	for n := range a {
		both = append(both, n)
	}
	for n := range b {
		if _, twice := a[n]; !twice {
			both = append(both, n)
		}
	}
	slices.SortFunc(both, func(x, y name) int {
		return cmp.Or(strings.Compare(x.job, y.job), strings.Compare(x.group, y.group))
	})
	return both
}
