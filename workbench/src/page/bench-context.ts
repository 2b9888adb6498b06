import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Bench, BenchStore } from './bench.ts';

export const BenchContext = createContext<BenchStore | undefined>(undefined);

/** A part of the bench that the calling view follows. */
export function useBench<T>(select: (bench: Bench) => T): T {
  const store = useContext(BenchContext);
  if (!store) throw new Error('a view outside the bench');
  return useStore(store, select);
}
