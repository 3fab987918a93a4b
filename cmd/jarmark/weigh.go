package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"os"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/weigh"
)

// runWeigh judges the weights in a batch file, or weights given by hand.
func runWeigh(a *app, o *options, args []string) error {
	if len(args) == 0 {
		return usagef(`jarmark weigh plum.toml, or jarmark weigh "10.3 oz" "10.1 oz"`, "weigh: name a batch file or give weights")
	}
	if by := weightAmong(args); by != "" {
		return usagef(`write what was weighed into the batch file, net = ["10.3 oz", "10.1 oz"] under its [[fill]], or give weights alone`, "weigh: %s is a weight, and stands beside a batch", by)
	}
	var declared unit.Mass
	if o.declared != "" {
		m, l := job.ParseWeights([]string{o.declared})
		if len(m) == 0 {
			return usagef(l[0].Hint, "--declared: %s", l[0].Message)
		}
		declared = m[0]
	}
	as, err := format(o, "text", "text", "pdf", "csv")
	if err != nil {
		return err
	}
	if as != "text" {
		return a.weighingRecord(o, args, declared, as)
	}
	results, found, in, err := a.weighings(o, args, declared)
	if err != nil {
		return err
	}
	a.print(told{}.fresh(found), in)
	if o.json {
		enc := json.NewEncoder(a.out)
		enc.SetIndent("", "  ")
		if err := enc.Encode(results); err != nil {
			return err
		}
	} else {
		for _, w := range results {
			fmt.Fprintf(a.out, "%s, %d weighed\n", w.Jar, w.Weighed)
			for _, line := range w.Lines {
				fmt.Fprintf(a.out, "  %s\n", line)
			}
		}
	}
	if found.HasErrors() {
		return errProblem
	}
	for _, w := range results {
		if !w.Pass {
			return errProblem
		}
	}
	return nil
}

// weightAmong is a weight given beside a batch; "" where there is none.
func weightAmong(args []string) (weight string) {
	batch := false
	for _, arg := range args {
		_, err := os.Stat(arg)
		switch net, _ := job.ParseWeights([]string{arg}); {
		case err == nil || store.IsBatchName(arg):
			batch = true
		case len(net) > 0:
			weight = arg
		}
	}
	if !batch {
		return ""
	}
	return weight
}

func (a *app) weighings(o *options, args []string, declared unit.Mass) ([]job.Weighing, diag.List, []job.Input, error) {
	if _, err := os.Stat(args[0]); err != nil && !store.IsBatchName(args[0]) {
		net, l := job.ParseWeights(args)
		if l.HasErrors() {
			return nil, l, nil, nil
		}
		env, _, err := job.NewEnv(nil)
		if err != nil {
			return nil, nil, nil, err
		}
		at, more := env.PlaceOf(cmp.Or(o.place, "us"))
		if more.HasErrors() {
			return nil, more, nil, nil
		}
		w, more := env.Weigh(at, "jars by hand", weigh.Sample{Net: net, Lot: o.lots}, declared)
		return []job.Weighing{w}, append(l, more...), nil, nil
	}
	env, batches, in, err := a.toWeigh(o, args)
	if err != nil {
		return nil, nil, nil, err
	}
	var out []job.Weighing
	var found diag.List
	for _, b := range batches {
		w, l := env.WeighBatch(b, declared)
		out = append(out, w...)
		found = append(append(found, b.Findings.Against(diag.Weighing)...), l...)
	}
	return out, found, in, nil
}

// toWeigh loads the batches that are weighed.
func (a *app) toWeigh(o *options, args []string) (*job.Env, []*job.Batch, []job.Input, error) {
	in, err := a.inputs(args)
	if err != nil {
		return nil, nil, nil, err
	}
	c, err := a.choices(o)
	if err != nil {
		return nil, nil, nil, err
	}
	env, err := a.plainEnv(homeOf(in))
	if err != nil {
		return nil, nil, nil, err
	}
	var out []*job.Batch
	for _, i := range in {
		out = append(out, env.Load(i, c))
	}
	return env, out, in, nil
}

// weighingRecord writes the record of weighing of batches.
func (a *app) weighingRecord(o *options, args []string, declared unit.Mass, as string) error {
	if _, err := os.Stat(args[0]); err != nil && !store.IsBatchName(args[0]) {
		return usagef("write the weights into the batch file: net = [\"10.2 oz\", ...] under [[fill]]", "weigh: a record needs a batch, with its lot")
	}
	env, batches, in, err := a.toWeigh(o, args)
	if err != nil {
		return err
	}
	f, found, err := env.WeighingRecord(batches, declared, as)
	if err == nil && !found.HasErrors() && len(f.Data) == 0 {
		a.print(found, in)
		return usagef("weigh full jars, take the empty jar off, and write net = [\"10.2 oz\", ...] under [[fill]]", "weigh: no jar of this batch was weighed")
	}
	return a.deliver(f, found, err, in, o.out, "weighing")
}
