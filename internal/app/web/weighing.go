package web

import "jarmark/internal/app/job"

// weighed tells what the weighed jars of a batch allow to declare, as
// `jarmark weigh` does.
func (s *site) weighed(b *job.Batch) (out []string) {
	results, _ := s.env().WeighBatch(b, 0) // its findings are told with the batch's
	for _, w := range results {
		if w.Advice == "" {
			continue
		}
		line := w.Jar + ": of " + many(w.Weighed, "weighed jar", "weighed jars") + ", the most that may be declared is " + w.Advice
		if w.Declared != "" && !w.Pass {
			line += "; " + w.Declared + " is too much"
		}
		out = append(out, line)
	}
	return out
}

// jarsOf counts the jars of a batch in the words they are sold by.
func jarsOf(b *job.Batch) (out []string) {
	if b.Cooked == nil {
		return nil
	}
	for _, j := range b.Cooked.Jars {
		line := itoa(j.Count) + " × " + j.Jar.Description
		if j.Planned() {
			line = "about " + line
		}
		out = append(out, line)
	}
	return out
}
