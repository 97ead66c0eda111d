/** Does one thing with the kernel; what goes wrong there is told with the name of the work it was. */
export function named<T>(what: () => string, work: () => T): T {
  try {
    return work();
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`${what()}: ${why}`, { cause });
  }
}
