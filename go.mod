module jarmark

go 1.26.0
