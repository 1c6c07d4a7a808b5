// A browser may refuse storage to a page in another site's frame by throwing when it is touched. The page's
// program cannot catch that at its start, so each refused store is replaced, before the program runs, by one
// that forgets when the page closes.
"use strict";
for (const name of ["localStorage", "sessionStorage"]) {
  try {
    void window[name].length;
  } catch {
    const kept = new Map();
    Object.defineProperty(window, name, {
      configurable: true,
      value: {
        getItem: (key) => (kept.has(String(key)) ? kept.get(String(key)) : null),
        setItem: (key, value) => void kept.set(String(key), String(value)),
        removeItem: (key) => void kept.delete(String(key)),
        clear: () => kept.clear(),
        key: (i) => [...kept.keys()][i] ?? null,
        get length() {
          return kept.size;
        },
      },
    });
  }
}
