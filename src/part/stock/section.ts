import type { ChannelStock, Side } from '../../brief/brief.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { startProfile } from '../prism-stock.ts'
import { polygon } from '../profile-edit.ts'
import { endSides, faceAxes, lieAxis, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

/**
 * Channel and tee with sharp corners and one thickness. Lying left-right or up-down the channel's web is at the rear
 * with the flanges toward the front; lying front-rear its web is at the left. A tee's flange is on top, of an upright
 * tee at the rear. Returns false where the sizes leave no section.
 */
export function buildSection(shop: Workshop, stock: ChannelStock): boolean {
  const [h, w, t] = [stock.height.mm, stock.width.mm, stock.thickness.mm]
  const axis = lieAxis[stock.lie]
  const { across, up } = faceAxes(axis)
  const least = stock.kind === 'channel' ? Math.min(w, h / 2) : Math.min(w, h)
  if (t >= least) {
    shop.must(
      'thickness-too-large',
      stock.thickness.span,
      `The thickness ${stock.thickness.text} leaves nothing of the ${stock.kind}'s section.`,
      'a thickness that leaves the legs apart',
    )
    return false
  }
  const drawn = stock.kind === 'channel' ? channel(h, w, t) : tee(h, w, t)
  const map = mapping(stock, w)
  const curves = polygon(
    drawn.points.map(map.point),
    drawn.faces.map((f) => map.name[f] ?? f),
  )
  startProfile(shop, axis, [0, stock.length.mm], curves)
  if (stock.kind === 'channel') {
    shop.aliases.set('web', [map.name.back!, 'web inside'])
    shop.aliases.set('upper flange', [map.name.high!, 'upper flange inside'])
    shop.aliases.set('lower flange', [map.name.low!, 'lower flange inside'])
    shop.aliases.set('flanges', [map.name.high!, map.name.low!])
    shop.aliases.set('toes', [map.name.tips!])
  } else {
    shop.aliases.set('flange', [map.name['flange face']!, 'flange inside'])
    shop.aliases.set('stem', ['stem low', 'stem high'])
  }

  const group = 'stock'
  const [low, high] = endSides[axis]!
  const wide = unitAxis[map.heightAlong === up ? across : up]
  const tall = unitAxis[map.heightAlong]
  const n = map.name
  const name = (f: string) => n[f] ?? f
  const distance = (size: ChannelStock['length'], from: string, to: string, direction: typeof wide) =>
    shop.choose({ kind: 'distance', size, from: name(from), to: name(to), direction, span: size.span, group })
  if (stock.kind === 'channel') {
    distance(stock.height, 'low', 'high', tall)
    distance(stock.width, 'back', 'tips', wide)
    shop.choose({
      kind: 'thickness',
      size: stock.thickness,
      from: name('back'),
      to: 'web inside',
      direction: wide,
      span: stock.thickness.span,
      group,
    })
    shop.imply('equal', 'web and flanges of one thickness', [
      name('back'),
      'web inside',
      'upper flange inside',
      'lower flange inside',
    ])
  } else {
    distance(stock.height, 'stem end', 'flange face', tall)
    distance(stock.width, 'flange low', 'flange high', wide)
    shop.choose({
      kind: 'thickness',
      size: stock.thickness,
      from: name('flange face'),
      to: 'flange inside',
      direction: tall,
      span: stock.thickness.span,
      group,
    })
    shop.imply('equal', 'flange and stem of one thickness', ['flange inside', 'stem low', 'stem high'])
    shop.imply('centred', 'stem in the middle of the flange', [
      'stem low',
      'stem high',
      name('flange low'),
      name('flange high'),
    ])
  }
  shop.choose({
    kind: 'distance',
    size: stock.length,
    from: low,
    to: high,
    direction: unitAxis[axis],
    span: stock.length.span,
    group,
  })
  shop.imply('square', 'legs and ends square to each other', [low, high])
  return true
}

interface Drawn {
  readonly points: Vec2[]
  readonly faces: string[]
}

/** Coordinates: out from the web's back, along the web. */
function channel(h: number, w: number, t: number): Drawn {
  return {
    points: [
      [0, 0],
      [w, 0],
      [w, t],
      [t, t],
      [t, h - t],
      [w, h - t],
      [w, h],
      [0, h],
    ],
    faces: ['low', 'tips', 'lower flange inside', 'web inside', 'upper flange inside', 'tips', 'high', 'back'],
  }
}

/** Coordinates: along the flange, up the stem toward the flange. */
function tee(h: number, w: number, t: number): Drawn {
  const [a, b] = [(w - t) / 2, (w + t) / 2]
  return {
    points: [
      [a, 0],
      [b, 0],
      [b, h - t],
      [w, h - t],
      [w, h],
      [0, h],
      [0, h - t],
      [a, h - t],
    ],
    faces: [
      'stem end',
      'stem high',
      'flange inside',
      'flange high',
      'flange face',
      'flange low',
      'flange inside',
      'stem low',
    ],
  }
}

interface Mapping {
  readonly point: (p: Vec2) => Vec2
  /** The axis of space that the web or stem runs along. */
  readonly heightAlong: 0 | 1 | 2
  /** Section words that are sides of the part. */
  readonly name: Readonly<Record<string, Side>>
}

function mapping(stock: ChannelStock, w: number): Mapping {
  if (stock.kind === 'channel') {
    if (stock.lie === 'left-right') {
      // profile (y, z): web at the rear
      const name = { low: 'bottom', high: 'top', back: 'rear', tips: 'front' } as const
      return { point: ([u, v]) => [w - u, v], heightAlong: 2, name }
    }
    if (stock.lie === 'front-rear') {
      const name = { low: 'bottom', high: 'top', back: 'left', tips: 'right' } as const
      return { point: ([u, v]) => [u, v], heightAlong: 2, name }
    }
    // upright, profile (x, y): web at the rear along x
    const name = { low: 'left', high: 'right', back: 'rear', tips: 'front' } as const
    return { point: ([u, v]) => [v, w - u], heightAlong: 0, name }
  }
  const ends = { 'stem end': 'bottom', 'flange face': 'top' } as const
  if (stock.lie === 'left-right') {
    return { point: (p) => p, heightAlong: 2, name: { ...ends, 'flange low': 'front', 'flange high': 'rear' } }
  }
  if (stock.lie === 'front-rear') {
    return { point: (p) => p, heightAlong: 2, name: { ...ends, 'flange low': 'left', 'flange high': 'right' } }
  }
  return {
    point: (p) => p,
    heightAlong: 1,
    name: { 'stem end': 'front', 'flange face': 'rear', 'flange low': 'left', 'flange high': 'right' },
  }
}
