package cli

// bookExamples are the examples of the short commands of book, by command.
var bookExamples = map[string]string{
	"list":      "list --kind card\nlist --deleted",
	"show":      "show tank lid\nshow --all tank lid\nshow --kind source booth 1",
	"edit":      `edit tank lid --name "tank lid, new" --tags tank,lid`,
	"delete":    "delete stove leg\ndelete --kind trial 3f0a",
	"restore":   "restore stove leg",
	"history":   "history tank lid",
	"compare":   `compare "tank lid" "tank rim"`,
	"recompute": "recompute tank lid\nrecompute --all",
	"person":    "person anna",
	"export":    "export book.jsonl\nexport cards.csv --csv",
	"import":    "import book.jsonl",
	"merge":     "merge other.db",
	"check":     "check",
	"backup":    "backup copy.db",
}
