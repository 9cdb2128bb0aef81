package catalog

// drawDilute shows the cups, each with its share of strong wash below and
// water above; or the one vessel before and after.
func drawDilute(b *bench) string {
	if len(b.answer.Rows) == 0 {
		after, _ := b.result("new-volume")
		water, _ := b.result("water-to-add")
		d := b.sheet("The wash before, and after {water-to-add} of water, to one scale.")
		scale := (jarFloor - jarTop) / after.Value
		level := float64((after.Value - water.Value) * scale)
		b.pair(d, level, "+ {water-to-add}", "{from}", "{to}", layer{"water", jarFloor - jarTop - level})
		return d.String()
	}
	rows := b.answer.Rows
	shown := rows
	if len(shown) > 8 {
		shown = rows[:8] // more would be too narrow to read; the table has them all
	}
	d := b.sheet("The cups, strong wash below and water above: {}.", ladderWords(rows))
	room := (sheetWidth - 40) / float64(len(shown))
	for i, row := range shown {
		full := row[2].Value + row[3].Value
		stock := (jarFloor - jarTop) * row[2].Value / full
		x := 20 + float64(float64(i)*room)
		jar(d, x+8, room-16, jarTop-20, layer{"colour", stock}, layer{"water", jarFloor - jarTop - stock})
		d.Words(row[1].Text, x+room/2, jarFloor+32, 24, "middle")
	}
	return d.String()
}

func ladderWords(rows [][]Cell) string {
	var cups []string
	for _, row := range rows {
		cups = append(cups, "strength "+row[1].Text)
	}
	return listing(cups)
}
