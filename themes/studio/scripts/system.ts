// What a Go program compiled for WASI asks of its system, as far as arithmetic
// needs one: a clock, chance, and somewhere to write that nobody reads.

/** The names and numbers of wasi_snapshot_preview1 that are used here. */
const done = 0
const notSupported = 52

/** system makes the imports of a module whose memory is known only later. */
export function system(module: WebAssembly.Module, memory: () => WebAssembly.Memory): WebAssembly.Imports {
  const view = (): DataView => new DataView(memory().buffer)
  const none = (count: number, size: number): number => {
    view().setUint32(count, 0, true)
    view().setUint32(size, 0, true)
    return done
  }
  const calls: Record<string, (...args: never[]) => unknown> = {
    args_sizes_get: none,
    environ_sizes_get: none,
    args_get: () => done,
    environ_get: () => done,
    sched_yield: () => done,
    // Go's own way of dying waits here; any other answer makes it die twice.
    poll_oneoff: () => done,
    clock_time_get: (_clock: number, _precision: bigint, at: number): number => {
      view().setBigUint64(at, BigInt(Math.round(performance.now() * 1e6)), true)
      return done
    },
    random_get: (at: number, length: number): number => {
      crypto.getRandomValues(new Uint8Array(memory().buffer, at, length))
      return done
    },
    fd_write: (_file: number, pieces: number, count: number, written: number): number => {
      let total = 0
      for (let i = 0; i < count; i++) total += view().getUint32(pieces + 8 * i + 4, true)
      view().setUint32(written, total, true)
      return done
    },
    proc_exit: (status: number): never => {
      throw new Error(`the calculators ended with status ${status}`)
    },
  }
  const imports: Record<string, Record<string, WebAssembly.ImportValue>> = {}
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    ;(imports[from] ??= {})[name] = calls[name] ?? (() => notSupported)
  }
  return imports
}
