// What a page with calculators loads.
import './page'
import { open } from './desk'

open()
