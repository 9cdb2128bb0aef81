package catalog

// all is the handbook's calculators in its order. A new calculator is a file
// of this package with one declaration, named here.
var all = []*Calculator{
	slipDensity,
	slipAdjust,
	slipBatch,
	slipColour,
	clayColour,
	washMix,
	washDilute,
	shrinkageBars,
	shrinkageSize,
	slipFit,
	tilePlan,
	stagePlan,
}

// All lists the calculators in the order of the handbook.
func All() []*Calculator { return all }

// Find gives the calculator of that name, or nil.
func Find(name string) *Calculator {
	for _, c := range all {
		if c.Name == name {
			return c
		}
	}
	return nil
}

// Input gives the input of that name, or nil.
func (c *Calculator) Input(name string) *Input {
	for i := range c.Inputs {
		if c.Inputs[i].Name == name {
			return &c.Inputs[i]
		}
	}
	return nil
}

// Output gives the output of that name, or nil.
func (c *Calculator) Output(name string) *Output {
	for i := range c.Outputs {
		if c.Outputs[i].Name == name {
			return &c.Outputs[i]
		}
	}
	return nil
}

// Column gives the column of that name, or nil.
func (c *Calculator) Column(name string) *Column {
	for i := range c.Columns {
		if c.Columns[i].Name == name {
			return &c.Columns[i]
		}
	}
	return nil
}
