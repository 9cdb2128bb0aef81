// What pages and the service worker say to each other.

/** Asked is what a page asks of a worker: to tell how things stand, to fill its cache again, to take the place of the one before, to keep nothing any more, to keep these units. */
export type Asked = { readonly ask: 'state' | 'take' | 'over' | 'drop' } | { readonly ask: 'units', readonly units: readonly string[] }

/** Failure says why something could not be taken: the network, other bytes than were published, no room. */
export type Failure = 'network' | 'bytes' | 'room'

/** News is what a page tells quietly: the handbook, or what it takes of a large one, is ready, or a new edition is. */
export type News = 'ready' | 'part' | 'new'

/** Amount is so many pages, and bytes of them with all that they need. */
export interface Amount {
  readonly pages: number
  readonly bytes: number
}

/** State is what a phone holds of an edition. */
export interface State {
  readonly edition: string
  readonly whole: boolean // nothing is left to choose
  readonly taken: number // when, in milliseconds since 1970
  readonly kept: Amount
  readonly all: Amount // of what can be kept
  readonly units: readonly (Amount & { readonly id: string, readonly chosen: boolean, readonly here: boolean })[]
}

/** Told is what a worker tells pages. */
export interface Told {
  readonly news?: News
  readonly state?: State | null // null: nothing is here
  readonly taking?: readonly [done: number, of: number] // files
  readonly failed?: Failure
}
