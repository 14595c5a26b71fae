package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// use is the memory and processor time of processes, as Linux counts it (proc(5)).
type use struct {
	memory float64       // bytes
	cpu    time.Duration // so far
}

// useOf is the use of one process: its resident set, and its time in user and system mode.
func useOf(pid int) (use, error) {
	rss, err := field(fmt.Sprintf("/proc/%d/status", pid), "VmRSS:")
	if err != nil {
		return use{}, err
	}
	cpu, err := cpuOf(pid)
	return use{rss * 1024, cpu}, err
}

// useBelow sums the use of all descendants of a process. Memory that several processes share counts once (proportional
// set size): the code of a program that is started a hundred times is in memory once.
func useBelow(pid int) (use, error) {
	children, err := childrenOf(pid)
	if err != nil {
		return use{}, err
	}
	var sum use
	for _, child := range children {
		pss, err := field(fmt.Sprintf("/proc/%d/smaps_rollup", child), "Pss:")
		if os.IsNotExist(err) { // ended meanwhile
			continue
		}
		if err != nil {
			return use{}, err
		}
		cpu, err := cpuOf(child)
		if err != nil {
			return use{}, err
		}
		below, err := useBelow(child)
		if err != nil {
			return use{}, err
		}
		sum.memory += pss*1024 + below.memory
		sum.cpu += cpu + below.cpu
	}
	return sum, nil
}

func childrenOf(pid int) ([]int, error) {
	files, err := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/children", pid))
	if err != nil {
		return nil, err
	}
	var list []int
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			continue // a thread that ended meanwhile
		}
		for _, word := range strings.Fields(string(text)) {
			child, err := strconv.Atoi(word)
			if err != nil {
				return nil, err
			}
			list = append(list, child)
		}
	}
	return list, nil
}

// cpuOf is a process's time in user and system mode, in ticks of 10 ms.
func cpuOf(pid int) (time.Duration, error) {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		return 0, err
	}
	_, after, _ := strings.Cut(string(text), ") ") // the name may hold blanks
	words := strings.Fields(after)
	if len(words) < 13 {
		return 0, fmt.Errorf("/proc/%d/stat: %d fields", pid, len(words))
	}
	ticks := 0
	for _, word := range words[11:13] {
		n, err := strconv.Atoi(word)
		if err != nil {
			return 0, err
		}
		ticks += n
	}
	return time.Duration(ticks) * 10 * time.Millisecond, nil
}

// field reads the number behind a name at the beginning of a line.
func field(file, name string) (float64, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return 0, err
	}
	for line := range strings.Lines(string(text)) {
		if rest, ok := strings.CutPrefix(line, name); ok {
			return strconv.ParseFloat(strings.Fields(rest)[0], 64)
		}
	}
	return 0, fmt.Errorf("%s has no %s", file, name)
}

// machineLoad is the machine's load average of the last minute, including other programs.
func machineLoad() string {
	text, err := os.ReadFile("/proc/loadavg")
	if err != nil {
		return "unknown"
	}
	load, _, _ := strings.Cut(string(text), " ")
	return load
}
