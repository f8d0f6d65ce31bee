/** The part's own sides as seen in the front view, whatever face is worked. */
export type Side = 'left' | 'right' | 'front' | 'rear' | 'top' | 'bottom'
/** A view by what the sheet calls it. A section's letter stands twice: `section A-A`. */
export type ViewName = Side | 'pictorial' | `section ${string}`
export type Practice = 'ASME' | 'ISO'
export type Projection = 'third angle' | 'first angle'
/** The axis along which a bar, tube or turned part lies. */
export type Lie = 'left-right' | 'front-rear' | 'up-down'
