package book

import "database/sql"

// OpenAdmin is a plain connection to the server.
func OpenAdmin(address string) (*sql.DB, error) { return sql.Open("pgx", address) }

// OpenRaw is a plain connection to a file.
func OpenRaw(file string) (*sql.DB, error) { return sql.Open("sqlite", dsn(file, "rwc", true)) }
