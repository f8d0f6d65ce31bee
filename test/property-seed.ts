import fc from 'fast-check'

/**
 * Property tests draw the same samples in every run, so that a red run can be repeated and a green one means the same
 * tomorrow. PROPERTY_SEED=<integer> draws others: a search for faults, not a gate. A property that takes over two
 * minutes fails instead of running on.
 */
fc.configureGlobal({
  seed: Number(process.env.PROPERTY_SEED ?? 20_251_101),
  interruptAfterTimeLimit: 120_000,
  markInterruptAsFailure: true,
})
