import { parentPort, workerData } from 'node:worker_threads';
import { buildPacket, type Job } from '../run.js';

/** One worker builds one packet: nothing with a handle crosses a thread, and a trap ends this thread only. */
const port = parentPort;
if (port) {
  buildPacket(workerData as Job, (stage) => port.postMessage({ stage }))
    .then((answer) => port.postMessage({ answer }))
    .catch((e: unknown) => port.postMessage({ failure: e instanceof Error ? (e.stack ?? e.message) : String(e) }));
}
