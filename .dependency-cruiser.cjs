// Imports point one way. Each room may import only the rooms listed beside it.
const may = {
  geometry: [],
  standards: [],
  brief: [],
  kernel: ['geometry'],
  part: ['brief', 'kernel', 'geometry', 'standards'],
  views: ['part', 'brief', 'kernel', 'geometry', 'standards'],
  tolerance: ['brief', 'standards'],
  sizes: ['views', 'part', 'brief', 'tolerance', 'geometry', 'kernel', 'standards'],
  sheet: ['sizes', 'views', 'part', 'brief', 'tolerance', 'geometry', 'standards'],
  check: ['sheet', 'sizes', 'views', 'part', 'brief', 'tolerance', 'geometry', 'kernel', 'standards'],
  read: ['part', 'brief', 'kernel', 'geometry', 'standards'],
  write: ['sheet', 'sizes', 'views', 'part', 'brief', 'kernel', 'geometry', 'standards'],
  register: ['brief'],
}
const rooms = Object.keys(may)
module.exports = {
  forbidden: [
    { name: 'no-cycle', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-orphans', severity: 'warn', from: { orphan: true, path: '^src' }, to: {} },
    ...rooms.map((room) => ({
      name: `${room}-imports`,
      comment: `${room}/ may import only: ${may[room].join(', ') || 'nothing of the project'}`,
      severity: 'error',
      from: { path: `^src/${room}/` },
      to: { path: '^src/', pathNot: `^src/(${[room, ...may[room]].join('|')})/` },
    })),
    {
      name: 'kernel-is-the-only-room-with-wasm',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/kernel/' },
      to: { path: 'replicad-opencascadejs' },
    },
    {
      name: 'node-only-in-app-and-write',
      comment: 'the engine runs in a page too',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(app|write|register)/' },
      to: { dependencyTypes: ['core'] },
    },
  ],
  options: { doNotFollow: { path: 'node_modules' }, tsConfig: { fileName: 'tsconfig.json' }, tsPreCompilationDeps: true },
}
