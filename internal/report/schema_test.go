package report

import (
	"encoding/json"
	"fmt"
	"os"
	"regexp"
	"slices"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// checker checks a document against the keywords that docs/schema.json uses. It fails on a keyword that it does not
// know, because otherwise nobody would check that rule.
type checker struct {
	defs   map[string]any
	faults []string
}

func (c *checker) say(path, format string, args ...any) {
	c.faults = append(c.faults, path+": "+fmt.Sprintf(format, args...))
}

func (c *checker) check(path string, schema map[string]any, v any) {
	for key, rule := range schema {
		switch key {
		case "$schema", "title", "description", "$defs", "additionalProperties":
		case "$ref":
			name := rule.(string)[len("#/$defs/"):]
			def, ok := c.defs[name].(map[string]any)
			if !ok {
				c.say(path, "the schema has no %s", name)
				continue
			}
			c.check(path, def, v)
		case "type":
			if !hasType(v, rule.(string)) {
				c.say(path, "%v is no %s", v, rule)
			}
		case "const":
			if v != rule {
				c.say(path, "%v is not %v", v, rule)
			}
		case "enum":
			if !slices.Contains(rule.([]any), v) {
				c.say(path, "%v is not one of %v", v, rule)
			}
		case "minLength":
			if s, ok := v.(string); ok && float64(len(s)) < rule.(float64) {
				c.say(path, "%q is too short", s)
			}
		case "pattern":
			if s, ok := v.(string); ok && !regexp.MustCompile(rule.(string)).MatchString(s) {
				c.say(path, "%q does not match %v", s, rule)
			}
		case "items":
			list, _ := v.([]any)
			for i, item := range list {
				c.check(fmt.Sprintf("%s[%d]", path, i), rule.(map[string]any), item)
			}
		case "required":
			object, _ := v.(map[string]any)
			for _, name := range rule.([]any) {
				if _, ok := object[name.(string)]; !ok {
					c.say(path, "%v is missing", name)
				}
			}
		case "properties":
			c.properties(path, schema, v)
		default:
			c.say(path, "the schema uses %s, which this test cannot check", key)
		}
	}
}

func (c *checker) properties(path string, schema map[string]any, v any) {
	known := schema["properties"].(map[string]any)
	object, _ := v.(map[string]any)
	for name, value := range object {
		sub, ok := known[name].(map[string]any)
		switch {
		case ok:
			c.check(path+"."+name, sub, value)
		case schema["additionalProperties"] == false:
			c.say(path, "%s is not in the schema", name)
		}
	}
}

func hasType(v any, want string) bool {
	switch x := v.(type) {
	case map[string]any:
		return want == "object"
	case []any:
		return want == "array"
	case string:
		return want == "string"
	case bool:
		return want == "boolean"
	case float64:
		return want == "number" || want == "integer" && x == float64(int(x))
	}
	return false
}

func loadSchema(t *testing.T, name string) map[string]any {
	t.Helper()
	b, err := os.ReadFile("../../docs/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var schema map[string]any
	if err := json.Unmarshal(b, &schema); err != nil {
		t.Fatal(err)
	}
	return schema
}

func faults(t *testing.T, schema map[string]any, document []byte) []string {
	t.Helper()
	var v any
	if err := json.Unmarshal(document, &v); err != nil {
		t.Fatal(err)
	}
	defs, _ := schema["$defs"].(map[string]any)
	c := checker{defs: defs}
	c.check("card", schema, v)
	return c.faults
}

func TestJSONKeepsItsSchema(t *testing.T) {
	schema := loadSchema(t, "schema.json")
	jobs := []calc.Job{{}, {Metal: "brass"}, {Filler: "steel"},
		{Feed: calc.Some(6.35), Amps: calc.Some(60), StickOut: calc.Some(12)},
		{Metal: "copper", Mode: "timed", Joint: "butt"}, {Joint: "plug", Mode: "pulsed"}, {Joint: "overlay",
			Thickness: calc.Some(10)},
		{Metal: "stainless-304", Metal2: "galvanized", Gauge2: 22}}
	for _, m := range deep.Of(t, tables.Metals, 5) { // each card is a search
		jobs = append(jobs, calc.Job{Metal: m.ID, Gauge: 18})
	}
	for _, j := range jobs {
		card, err := calc.Solve(j)
		if err != nil {
			t.Fatalf("%+v: %v", j, err)
		}
		b, err := JSON(Card(&card), "test")
		if err != nil {
			t.Fatalf("%+v: %v", j, err)
		}
		for _, fault := range faults(t, schema, b) {
			t.Errorf("%+v: %s", j, fault)
		}
	}
}

// The checker itself must find faults.
func TestCheckerFindsFaults(t *testing.T) {
	schema := loadSchema(t, "schema.json")
	for _, bad := range []string{`{}`, `{"schema":2}`, `[]`, `{"schema":1,"zone":"warm","extra":1}`,
		`{"schema":1,"version":"x","job":{"gauge":1.5},"used":{},"assumed":[],"figures":[{"name":"Bad Name"}],` +
			`"settings":[],"warnings":[],"edges":[],"zone":"","sections":{}}`} {
		if len(faults(t, schema, []byte(bad))) == 0 {
			t.Errorf("%s passes", bad)
		}
	}
}

// A reader of the JSON can feed "used" back and gets the same card.
func TestJobRoundTrips(t *testing.T) {
	card, err := calc.Solve(calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Feed: calc.Some(6.35)})
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(card.Used)
	if err != nil {
		t.Fatal(err)
	}
	var back calc.Job
	if err := json.Unmarshal(b, &back); err != nil || back != card.Used {
		t.Errorf("%s came back as %+v (%v)", b, back, err)
	}
}
