// Package cores shares work among the cores of the machine.
package cores

import (
	"runtime"
	"sync"
)

// Each runs f(0..n-1) on all cores and returns when all are done.
func Each(n int, f func(int)) {
	var wg sync.WaitGroup
	next := make(chan int)
	for range min(n, runtime.GOMAXPROCS(0)) {
		wg.Go(func() {
			for i := range next {
				f(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wg.Wait()
}
