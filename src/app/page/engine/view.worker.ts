import { help, type Share } from '../../crew/share.ts'

self.onmessage = ({ data }: MessageEvent<Share>) => help(data, (word) => self.postMessage(word))
