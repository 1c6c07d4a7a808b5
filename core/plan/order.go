package plan

import (
	"math/bits"
	"slices"
)

// order sorts options by what each costs, those that cost the same in tie order.
//
// A cost and an option go into one word, which sorts much faster than two. Where the costs lie too far apart for that, their last
// bits are left out, and what those decide is put right afterwards.
func (x *Index) order(list []int32, cost []int64) {
	if len(list) < 2 {
		return
	}
	least, most := int64(never), -int64(never)
	for _, o := range list {
		least, most = min(least, cost[o]), max(most, cost[o])
	}
	number := bits.Len(uint(len(cost)))
	lost := max(0, bits.Len64(uint64(most-least))+number-64)
	keys := x.keys[:0]
	for _, o := range list {
		keys = append(keys, uint64(cost[o]-least)>>lost<<number|uint64(o))
	}
	x.keys = keys
	slices.Sort(keys)
	for i, k := range keys {
		o := int32(k & (1<<number - 1))
		j := i
		for ; j > 0 && lost > 0 && cost[list[j-1]] > cost[o]; j-- {
			list[j] = list[j-1]
		}
		list[j] = o
	}
}
