// What a page with calculators loads.
import { open } from './desk'

open()
