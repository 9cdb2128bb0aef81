package stage

// entry is a node in the heap at the cost it had when it was put there, with
// the least that must still come.
type entry struct {
	cost cost
	node int32
}

// heap is a binary heap of entries by cost; of equal costs the node that was
// reached first comes first.
type heap []entry

func (e entry) before(o entry) bool {
	return e.cost < o.cost || e.cost == o.cost && e.node < o.node
}

func (h *heap) push(e entry) {
	*h = append(*h, e)
	for i := len(*h) - 1; i > 0; {
		up := (i - 1) / 2
		if !(*h)[i].before((*h)[up]) {
			return
		}
		(*h)[i], (*h)[up] = (*h)[up], (*h)[i]
		i = up
	}
}

func (h *heap) pop() entry {
	top, end := (*h)[0], len(*h)-1
	(*h)[0] = (*h)[end]
	*h = (*h)[:end]
	for i := 0; ; {
		least := i
		for down := 2*i + 1; down <= 2*i+2 && down < end; down++ {
			if (*h)[down].before((*h)[least]) {
				least = down
			}
		}
		if least == i {
			return top
		}
		(*h)[i], (*h)[least] = (*h)[least], (*h)[i]
		i = least
	}
}
