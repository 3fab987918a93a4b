//go:build unix

package main

import (
	"encoding/csv"
	"math/rand"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
)

// TestLedgerTwoHands: while two runs of any commands write one ledger, and one
// of them is killed on the way, every row is whole, a list's promises stand all
// or not at all, and jars made are given + sold + home + lost.
func TestLedgerTwoHands(t *testing.T) {
	dir, _ := season(t)
	batch := filepath.Join(dir, demoBatch)
	text, err := os.ReadFile(batch)
	if err != nil {
		t.Fatal(err)
	}
	text = regexp.MustCompile(`(?m)^(count|sealed) = \d+`).ReplaceAll(text, []byte("$1 = 60")) // enough for all
	if err := os.WriteFile(batch, text, 0o644); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"a.csv": "to,jars\nAda,1\nBo,1\n", "b.csv": "to,jars\nCy,2\n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	add := func(args ...string) []string {
		return append([]string{"ledger", "add", "--lot", "L26165-SR", "--count", "1", "--why"}, args...)
	}
	acts := [][]string{add("eaten"), add("given", "--who", "Ida"), add("came home", "--who", "Ida"), add("sold", "--who", "Fair", "--price", "9"),
		{"pack", ".", "--list", "a.csv"}, {"pack", ".", "--list", "b.csv"}, {"ledger", "--undo"}, {"pack", ".", "--event", "Millbrook Saturday Market", "--came-home", "1"}}
	rnd := rand.New(rand.NewSource(5))
	rounds, seen := 24, map[string]int{}
	if testing.Short() {
		rounds = 4
	}
	for range rounds {
		one, other := jarmark(t, dir, acts[rnd.Intn(len(acts))]...), jarmark(t, dir, acts[rnd.Intn(len(acts))]...)
		if err := one.Start(); err != nil {
			t.Fatal(err)
		}
		if err := other.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(20+rnd.Intn(120)) * time.Millisecond)
		one.Process.Kill()
		one.Wait() // killed, or refused: both are well
		other.Wait()
		where(t, dir)
		promised := listRows(t, filepath.Join(dir, "ledger.csv"))
		for from, n := range promised {
			seen[from] += n
		}
		if a, b := promised["list a.csv"], promised["list b.csv"]; a != 0 && a != 2 || b != 0 && b != 2 {
			t.Fatalf("%d jars promised by a.csv, %d by b.csv: a list was written in part", a, b)
		}
	}
	if !testing.Short() && (seen["list a.csv"] == 0 || seen["list b.csv"] == 0) {
		t.Error("no list was ever written:", seen)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".jarmark-*-*.tmp")); len(left) > 1 {
		t.Error("work in progress piles up:", left)
	}
}

// listRows sums the promises by where they came from; every row is whole.
func listRows(t *testing.T, path string) map[string]int {
	t.Helper()
	sums := map[string]int{}
	data, err := os.ReadFile(path)
	if os.IsNotExist(err) {
		return sums
	}
	r := csv.NewReader(strings.NewReader(string(data)))
	r.FieldsPerRecord = 8 // date, lot, jar, count, why, who, price, from
	rows, bad := r.ReadAll()
	if err != nil || bad != nil || !strings.HasSuffix(string(data), "\n") {
		t.Fatalf("%v %v\n%s", err, bad, data)
	}
	for _, row := range rows[1:] {
		if n, _ := strconv.Atoi(row[3]); row[4] == "promised" {
			sums[row[7]] += n
		}
	}
	return sums
}
