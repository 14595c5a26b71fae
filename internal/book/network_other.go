//go:build !linux

package book

// network names the network file system that a folder lies on; here nothing tells.
func network(string) string { return "" }
