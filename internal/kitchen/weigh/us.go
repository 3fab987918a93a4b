package weigh

import (
	"fmt"
	"math"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// RecordUS is what federal law says of a record of weighing (NIST Handbook 133).
const RecordUS = "No federal rule asks a packer for this record; officials who test a lot by NIST Handbook 133 keep their own"

// US checks a sample against a label as a Handbook 133 inspection would: the
// average test, then the individual (MAV) test. A sample smaller than the plan
// asks for is judged by the same formulas and reported as a screening. A
// finding is an error only where no verdict is possible.
func US(label unit.Mass, s Sample) (Report, diag.List) {
	r := Report{System: "us", Label: label, metric: s.Metric}
	st, l, ok := s.measure()
	if !ok {
		return r, l
	}
	mav, tabled := MAV(label)
	if !tabled {
		l.Errorf("label-outside-table", s.File, s.Path, "no allowable variation is tabled for a label of %s", r.Mass(label, 0)).
			Hinted("ask your weights and measures office; the table here ends at 3.20 lb (1450 g)").Cited(citeMAV)
		return r, l
	}
	r.fill(st)
	r.MAV = mav
	plan := PlanFor(st.lot)
	r.average(st, plan)
	r.individual(s.Net, plan)
	r.conclude()
	l = append(l, caution(s, st, plan.Sample, citePlan)...)
	return r, l
}

// average runs the average test: pass when the mean error is not negative, or
// within the sample error limit s x SCF. One jar of many has no limit.
func (r *Report) average(st stats, plan Plan) {
	short := unit.Mass(st.n)*r.Label - st.sum // > 0: short in total
	scf := factor(st.n)
	r.SEL = st.sd * float64(scf) / 1000
	r.figure("sample correction factor", fmt.Sprintf("%.3f", float64(scf)/1000), citePlan)
	r.figure("sample error limit", r.grams("%.3f", r.SEL), citePlan)
	r.figure("sample the handbook asks for", fmt.Sprintf("%d of %d", plan.Sample, st.lot), citePlan)
	if st.lot == 1 {
		r.check("average test", true, "a lot of one jar is judged by the individual test alone", citePlan)
		return
	}
	xbar := float64(short) / float64(st.n) / float64(unit.Gram)
	pass := short <= 0 || st.n > 1 && math.Abs(xbar) <= r.SEL
	r.check("average test", pass, fmt.Sprintf("mean %s, error %s, limit %s", r.Mass(r.Mean, 2), r.grams("%+.3f", -xbar), r.grams("%.3f", r.SEL)), citeAverage)
}

// individual runs the MAV test on every jar.
func (r *Report) individual(net []unit.Mass, plan Plan) {
	r.figure("maximum allowable variation", r.Mass(r.MAV, 1), citeMAV)
	for _, m := range net {
		if m < r.Label-r.MAV {
			r.Below++
		}
	}
	allowed := 0
	if len(net) >= plan.Sample {
		allowed = plan.Allowed
	}
	r.check("individual test", r.Below <= allowed,
		fmt.Sprintf("lightest %s, %s below %s, %d allowed", r.Mass(r.Min, 1), jars(r.Below), r.Mass(r.Label-r.MAV, 1), allowed), citeMAV)
}
