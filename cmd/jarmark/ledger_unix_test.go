//go:build unix

package main

import (
	"encoding/csv"
	"math/rand"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

// where reads the one line of the demo lot from `jarmark ledger --format csv`.
func where(t *testing.T, dir string) map[string]int {
	t.Helper()
	out, err := jarmark(t, dir, "ledger", "--format", "csv", "-o", "-").Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, tail(out))
	}
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(out), "\ufeff"))).ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatal(rows, err)
	}
	n := map[string]int{}
	for i, head := range rows[0] {
		n[head], _ = strconv.Atoi(rows[1][i])
	}
	if n["made"] != n["given"]+n["sold"]+n["home"]+n["eaten"]+n["broken"]+n["recalled"] || n["home"] < 0 {
		t.Fatalf("jars made are not given + sold + home + lost: %v", n)
	}
	return n
}

// TestLedgerAtOnce: rows that many runs add at once all land, none twice.
func TestLedgerAtOnce(t *testing.T) {
	dir, _ := season(t)
	whys := [][]string{{"given", "--who", "Ida"}, {"eaten"}, {"broken"}, {"sold", "--who", "Fair", "--price", "9"}}
	var wg sync.WaitGroup
	for i := range 8 {
		wg.Go(func() {
			args := append([]string{"ledger", "add", "--lot", "L26165-SR", "--count", "1", "--why"}, whys[i%4]...)
			if out, err := jarmark(t, dir, args...).CombinedOutput(); err != nil {
				t.Errorf("%v\n%s", err, tail(out))
			}
		})
	}
	wg.Wait()
	if n := where(t, dir); n["given"] != 2 || n["sold"] != 2 || n["eaten"] != 2 || n["broken"] != 2 || n["home"] != 4 {
		t.Error(n)
	}
}

// TestLedgerKilled: after a kill at any moment the ledger is the old one or the
// new one, and every jar is somewhere.
func TestLedgerKilled(t *testing.T) {
	dir, _ := season(t)
	path := filepath.Join(dir, "ledger.csv")
	made := where(t, dir)["made"]
	rnd := rand.New(rand.NewSource(2))
	runs := 24
	if testing.Short() {
		runs = 8
	}
	for i := range runs {
		before, _ := os.ReadFile(path) // none at first
		row := "L26165-SR,,1,eaten,,,hand"
		why := []string{"--why", "eaten"}
		if i%2 == 1 {
			why = []string{"--why", "came home", "--who", "Ida"}
			row = "L26165-SR,,1,came home,Ida,,hand"
		}
		if i%2 == 1 && !strings.Contains(string(before), "given") {
			jarmark(t, dir, "ledger", "add", "--lot", "L26165-SR", "--count", "4", "--why", "given", "--who", "Ida").Run()
			before, _ = os.ReadFile(path)
		}
		cmd := jarmark(t, dir, append([]string{"ledger", "add", "--lot", "L26165-SR", "--count", "1"}, why...)...)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(rnd.Intn(60)) * time.Millisecond)
		cmd.Process.Kill()
		cmd.Wait()
		now, _ := os.ReadFile(path)
		added, whole := strings.CutPrefix(string(now), string(before))
		if !whole || added != "" && !strings.HasSuffix(added, row+"\n") {
			t.Fatalf("neither the old ledger nor the new one:\n%s", now)
		}
		n, rows := where(t, dir), string(now)
		eaten, given, back := strings.Count(rows, ",1,eaten,"), 4*strings.Count(rows, ",4,given,Ida"), strings.Count(rows, ",1,came home,Ida")
		if n["made"] != made || n["eaten"] != eaten || n["given"] != given-back || n["home"] != made-eaten-given+back {
			t.Fatalf("%d made, %d eaten, %d given, %d back by the rows: %v", made, eaten, given, back, n)
		}
	}
	noLeftovers(t, filepath.Join(dir, "out"))
}
