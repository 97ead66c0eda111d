import { Worker } from 'node:worker_threads';

/** Thrown when the worker trapped, ran out of memory or was still busy at the limit: our own bug, exit 70. */
export class WatchdogError extends Error {}

/**
 * Runs a job in one worker thread and gives up on it after `limitMs`. Only plain data crosses.
 * @param entry module that listens for one message and posts one answer (progress lines first, as `{ stage }`)
 */
export function runWatched<T>(entry: URL, job: unknown, limitMs: number, onStage: (stage: string) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(entry, { workerData: job, resourceLimits: { maxOldGenerationSizeMb: 1024 } });
    let last = 'start';
    const timer = setTimeout(() => {
      void worker.terminate();
      reject(new WatchdogError(`no answer within ${limitMs / 1000} s; last stage: ${last}`));
    }, limitMs);
    const finish = (act: () => void): void => {
      clearTimeout(timer);
      void worker.terminate();
      act();
    };
    worker.on('message', (m: { stage?: string; answer?: T; failure?: string }) => {
      if (m.stage !== undefined) {
        last = m.stage;
        onStage(m.stage);
      } else if (m.failure !== undefined) {
        const text = `${m.failure} (last stage: ${last})`;
        finish(() => reject(new WatchdogError(text)));
      } else finish(() => resolve(m.answer as T));
    });
    worker.on('error', (e: Error) => finish(() => reject(new WatchdogError(`${e.message} (last stage: ${last})`))));
    worker.on('exit', (code) =>
      finish(() => reject(new WatchdogError(`worker ended with ${code} (last stage: ${last})`))),
    );
  });
}
