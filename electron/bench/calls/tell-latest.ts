/** Tells a list that takes a while to read, so that an older one never comes after a newer one. */

/**
 * One listing at a time: calls meanwhile cause one more behind it, and only the last of them is told. Each call answers with a
 * list that was begun after it, once that was told; a listing that throws rejects the calls that wait for it.
 */
export function tellLatest<T>(list: () => Promise<T>, tell: (list: T) => void): () => Promise<T> {
  let reading: Promise<T> | null = null;
  let next: Promise<T> | null = null;

  const begin = async (): Promise<T> => {
    next = null;
    reading = list();
    let listed: T;
    try {
      listed = await reading;
    } finally {
      reading = null;
    }
    const newer = waiting();
    if (newer !== null) return newer;
    tell(listed);
    return listed;
  };
  const waiting = (): Promise<T> | null => next;
  return () => {
    if (reading === null && next === null) return begin();
    return (next ??= (reading ?? Promise.resolve()).then(begin, begin));
  };
}
