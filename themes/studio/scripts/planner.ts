// What a page loads whose calculators plan: the desk, with rows to choose and
// steps to follow.
import './page'
import { Box } from './box'
import { open } from './desk'
import { RowsBox } from './rows'
import { showSteps } from './steps'

open({
  box: (root) => ('rowsMost' in root.dataset ? new RowsBox(root) : new Box(root)),
  rows: showSteps,
})
