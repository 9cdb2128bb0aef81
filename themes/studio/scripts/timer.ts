// The arithmetic of timers. What is left is worked out from the clock whenever it
// is shown, so that a sleep of the phone or a reload costs nothing.
import * as words from '../words.yaml'
import { fill } from './say'
import type { Timer } from './stepkept'

/** Wait is a time that a step names, in seconds; most is the greater end of a range, or nothing. */
export interface Wait {
  readonly seconds: number
  readonly most: number
}

/** waitsOf reads times as the page holds them: "120 600-1800". */
export function waitsOf(text: string): Wait[] {
  return text.split(' ').filter((one) => one !== '').map((one) => {
    const [seconds = 0, most = 0] = one.split('-').map(Number)
    return { seconds, most }
  })
}

/** left is how many whole seconds are still to go, never fewer than none. */
export function left(end: number, now: number): number {
  return Math.max(0, Math.ceil((end - now) / 1000))
}

/** due returns the timers that are over and of which that has not been said yet. */
export function due(timers: readonly Timer[], now: number): Timer[] {
  return timers.filter((timer) => !timer.said && left(timer.end, now) === 0)
}

/** dial writes seconds as a clock does: 4:05, 1:04:05. */
export function dial(seconds: number): string {
  const two = (n: number): string => String(n).padStart(2, '0')
  const hours = Math.floor(seconds / 3600)
  const minutes = Math.floor(seconds / 60) % 60
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`
}

/** said says seconds in the largest unit in which they are whole: 1 hour, 90 minutes. */
export function said(seconds: number): string {
  if (seconds % 3600 === 0) return seconds === 3600 ? words['step-hour'] ?? '' : fill(words['step-hours'], seconds / 3600)
  if (seconds % 60 === 0) return seconds === 60 ? words['step-minute'] ?? '' : fill(words['step-minutes'], seconds / 60)
  return fill(words['step-seconds'], seconds)
}
