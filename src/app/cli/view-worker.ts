import { parentPort } from 'node:worker_threads'
import { help, type Share } from '../crew/share.ts'

parentPort!.on('message', (share: Share) => help(share, (word) => parentPort!.postMessage(word)))
