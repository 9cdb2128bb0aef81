// What a page loads whose calculators plan: the desk, with layers to choose
// and steps to follow.
import { Box } from './box'
import { open } from './desk'
import { LayersBox } from './layers'
import { showSteps } from './steps'

open({
  box: (root) => ('layers' in root.dataset ? new LayersBox(root) : new Box(root)),
  rows: showSteps,
})
