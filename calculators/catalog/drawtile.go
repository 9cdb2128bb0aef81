package catalog

// mostDrawn is how many tiles fit into a drawing with their codes.
const mostDrawn = 12

// drawTile shows the mixes: a line of tiles, each filled as far up as its
// addition is of the highest, or the triangle of the blends.
func drawTile(b *bench) string {
	if b.word("kind") == "triaxial" {
		return drawTriangle(b)
	}
	rows := b.answer.Rows
	top := rows[len(rows)-1][1].Value
	d := b.sheet("The mixes from {} to {}, each tile filled as far up as its addition is of the highest.",
		withUnit(rows[0][1].Text, "%"), withUnit(rows[len(rows)-1][1].Text, "%"))
	if len(rows) > mostDrawn {
		rows = rows[:mostDrawn] // the table has them all
	}
	room := (sheetWidth - 20) / float64(len(rows))
	width := min(room-8, 90)
	for i, row := range rows {
		x := 10 + float64((float64(i)+0.5)*room) - width/2
		fill := 180 * row[1].Value / top
		d.Box("clay", x, 40, width, 180)
		d.Box("colour", x, 220-fill, width, fill)
		d.Box("ink", x, 40, width, 180)
		d.Words(row[0].Text, x+width/2, 256, 24, "middle")
	}
	return d.String()
}

// drawTriangle shows where each blend stands between the three mixes.
func drawTriangle(b *bench) string {
	rows, side := b.answer.Rows, b.value("points")
	d := b.sheet("A triangle of blends: A at the top, B at the left, C at the right, {points} along a side.")
	for _, row := range rows {
		across, down := (row[3].Value-row[2].Value)/200, 1-row[1].Value/100
		x, y := 320+float64(across*520), 40+float64(down*240)
		radius := min(24, 250/side)
		d.Dot("clay", x, y, radius)
		d.Dot("ink", x, y, radius)
		if side <= 7 {
			d.Words(row[0].Text, x, y+8, 22, "middle")
		}
	}
	d.Words("A", 364, 48, textSize, "start")
	d.Words("B", 22, 290, textSize, "middle")
	d.Words("C", 618, 290, textSize, "middle")
	return d.String()
}
