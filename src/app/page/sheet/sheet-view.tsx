import {
  type ReactNode,
  useCallback,
  useEffect,
  useImperativeHandle,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import type { Mark } from '../../../brief/mark.ts'
import { grownBy } from '../../../sheet/arrange/boxes.ts'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Drawn } from '../engine/messages.ts'
import { groundOf, itemAt } from './ground.ts'
import { type Extent, liftPlace } from './lift-place.ts'
import { type Light, lightOfItem, type Ties } from './light.ts'
import { LineStop } from './line-stop.tsx'
import { Ink } from './paint.ts'
import { PencilMarks } from './pencil-marks.tsx'
import { SizeField } from './size-field.tsx'
import { boxAt, fingerBoxes, sizePlaces } from './size-places.ts'
import { SizeStops } from './size-stops.tsx'
import { nearestTouched, type Touched, touchable } from './touch.ts'
import { type Drag, useHands } from './use-hands.ts'
import { type Covered, fitted, kept, moved, type Viewport, windowPoint, zoomed } from './viewport.ts'

/** What the bench may ask of a sheet that lies on it. */
export interface SheetHandle {
  /** The whole sheet, clear of slip and margin. */
  readonly showWhole: () => void
  readonly realSize: () => void
  readonly zoom: (factor: number) => void
  readonly pan: (dx: number, dy: number) => void
  readonly svg: () => SVGSVGElement | null
  /** Puts the ink of a newer drawing on the paper before the page takes it in; false where the paper must change too. */
  readonly paintAhead: (drawn: Drawn) => boolean
}

export interface SheetViewProps {
  readonly drawn: Drawn
  readonly ties: Ties
  readonly marks: readonly Mark[]
  /** The sheet is older than the brief, which could not be drawn. */
  readonly stale: boolean
  readonly light: Light | undefined
  readonly covered: Covered
  readonly pixelsPerMm: number
  readonly openMark: number | undefined
  readonly handle: React.Ref<SheetHandle>
  readonly onLight: (light: Light | undefined) => void
  /** An item was chosen by click or key; the light stays until the next. */
  readonly onChoose: (item: number | undefined, light: Light | undefined) => void
  readonly onSize: (touched: Touched, typed: string) => string | undefined
  readonly onDrag: (drag: Drag) => void
  readonly onMark: (mark: number) => void
  /** Absent: the pictorial stays on this sheet. */
  readonly onLift?: () => void
  readonly children?: ReactNode
}

/** Paper mm that the words of the lifting take, at a scale; the style sheet letters them in 0.82rem. */
const extentAt = (scale: number): Extent => {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  return { width: (2.75 * rem) / scale, height: (1.2 * rem) / scale }
}

/** Reach of a hand in px: a mouse is finer than a finger. */
const REACH = { mouse: 7, touch: 18 }
/** Px that a finger is given at a size, each way. */
const FINGER = 34

/** The sheet as true paper on the bench: zoom to the pointer, pan, and everything on it within reach. */
export function SheetView(props: SheetViewProps) {
  const { drawn, ties, stale, covered, pixelsPerMm, onChoose, onDrag } = props
  const sheet = drawn.sheet!
  const { width, height } = sheet
  const frame = useRef<HTMLDivElement>(null)
  const svg = useRef<SVGSVGElement>(null)
  const ink = useRef<SVGGElement>(null)
  const painter = useRef<Ink>(undefined)
  const [area, setArea] = useState({ width: 0, height: 0 })
  const [view, setView] = useState<Viewport>({ scale: 3, x: 0, y: 0 })
  const fits = useRef(true)
  const [field, setField] = useState<Touched>()
  const pointer = useRef('mouse')
  const ground = useMemo(() => groundOf(sheet), [sheet])
  const places = useMemo(() => sizePlaces(ground), [ground])
  const own = useMemo(() => places.map(({ box }) => grownBy(box, 0.6)), [places])
  const [coarse] = useState(() => matchMedia('(pointer: coarse)').matches)
  const least = coarse ? FINGER / view.scale : 0
  const boxes = useMemo(() => (least === 0 ? own : fingerBoxes(own, least)), [own, least])

  useLayoutEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setArea({ width: entry.contentRect.width, height: entry.contentRect.height })
    })
    observer.observe(frame.current!)
    return () => observer.disconnect()
  }, [])
  const { left, right, top, bottom } = covered
  const showWhole = useCallback(() => {
    fits.current = true
    if (area.width > 0) setView(fitted({ width, height }, area, { left, right, top, bottom }))
  }, [width, height, area, left, right, top, bottom])
  useLayoutEffect(() => {
    if (fits.current) showWhole()
  }, [showWhole])

  const paint = useCallback((fresh: Sheet) => {
    painter.current ??= new Ink(ink.current!)
    if (painter.current.paint(fresh)) frame.current?.dispatchEvent(new CustomEvent('sheetpainted', { bubbles: true }))
  }, [])
  useLayoutEffect(() => paint(sheet), [sheet, paint])
  useLayoutEffect(() => painter.current?.light(sheet, props.light), [props.light, sheet])

  const change = useCallback((next: (old: Viewport) => Viewport) => {
    fits.current = false
    setView(next)
  }, [])
  useImperativeHandle(
    props.handle,
    () => ({
      showWhole,
      realSize: () =>
        change((v) => zoomed(v, pixelsPerMm / v.scale, left + (area.width - left - right) / 2, area.height / 2)),
      zoom: (factor) => change((v) => zoomed(v, factor, left + (area.width - left - right) / 2, area.height / 2)),
      pan: (dx, dy) => change((v) => kept(moved(v, dx, dy), sheet, area)),
      svg: () => svg.current,
      paintAhead: ({ sheet: fresh }) => {
        if (!fresh || stale || fresh.width !== sheet.width || fresh.height !== sheet.height) return false
        paint(fresh)
        return true
      },
    }),
    [showWhole, change, pixelsPerMm, area, left, right, sheet, stale, paint],
  )

  const touch = useCallback(
    (dimension: string, at?: readonly [number, number]) => {
      const list = touchable(drawn, ground, dimension)
      setField(at ? nearestTouched(list, at) : list[0])
    },
    [drawn, ground],
  )
  // These stay the same from keystroke to keystroke, so that stops and rings are made anew with a new sheet only.
  const latest = useRef(props)
  latest.current = props
  const lightAt = useCallback((index: number | undefined) => {
    const { ties: now, onLight } = latest.current
    onLight(index === undefined ? undefined : { ...lightOfItem(now, index), item: index })
  }, [])
  const chooseAt = useCallback((index: number) => {
    latest.current.onChoose(index, lightOfItem(latest.current.ties, index))
  }, [])
  const carry = useCallback((drag: Drag) => latest.current.onDrag(drag), [])
  const openAt = useCallback((mark: number) => latest.current.onMark(mark), [])
  const hands = useHands({
    frame,
    paper: sheet,
    view,
    change,
    itemAt: (point, kind, scale) => {
      if (kind === 'mouse') return itemAt(ground, point, REACH.mouse / scale)
      // Under a finger a size comes before the lines about it.
      const size = places[boxAt(fingerBoxes(own, FINGER / scale), point)]
      return size ? size.items[0] : itemAt(ground, point, REACH.touch / scale)
    },
    itemOf: (index) => sheet.items[index]!,
    onHover: lightAt,
    onTouch: (index, point) => {
      setField(undefined)
      onChoose(index, index === undefined ? undefined : lightOfItem(ties, index))
      const tie = index === undefined ? undefined : sheet.items[index]!.tie
      if (tie?.dimension) touch(tie.dimension, point)
    },
    onDrag,
  })
  const leaveField = (back: boolean) => {
    const id = field?.dimension
    setField(undefined)
    const stops = [...(frame.current?.querySelectorAll<SVGElement>('.hit') ?? [])]
    if (back) stops.find((stop) => stop.dataset.dimension === id)?.focus()
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: another brief, another size
  useEffect(() => setField(undefined), [drawn.brief.text])

  const box = `${-view.x / view.scale} ${-view.y / view.scale} ${Math.max(1, area.width) / view.scale} ${Math.max(1, area.height) / view.scale}`
  const lift = useMemo(() => liftPlace(ground, extentAt(view.scale)), [ground, view.scale])
  const corner = props.onLift && lift && windowPoint(view, sheet, lift)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: what lies on the sheet has the roles
    <div
      className={`sheet-frame${hands.dragging ? ' dragging' : ''}`}
      ref={frame}
      {...hands.listeners}
      onPointerDownCapture={(event) => {
        pointer.current = event.pointerType
      }}
      onMouseDown={(event) => {
        // What a browser sends after a finger for the sake of old pages would take the keyboard from the size just opened.
        const inField = event.target instanceof Element && event.target.closest('.size-field')
        if (field && pointer.current !== 'mouse' && !inField) event.preventDefault()
      }}
    >
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no set of fields */}
      <svg
        ref={svg}
        className={`sheet${stale ? ' stale' : ''}`}
        viewBox={box}
        role="group"
        aria-label={`Sheet: ${sheet.title}, ${sheet.format}, scale ${sheet.scale}`}
      >
        <title>{sheet.title}</title>
        <rect className="paper" width={sheet.width} height={sheet.height} />
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of lines takes no focus */}
        <g ref={ink} className="items" aria-hidden="true" />
        <PencilMarks
          drawn={drawn}
          ties={ties}
          ground={ground}
          marks={props.marks}
          open={props.openMark}
          onMark={openAt}
        />
        <LineStop drawn={drawn} onFocus={lightAt} onChoose={chooseAt} onCarry={carry} />
        <SizeStops
          drawn={drawn}
          sheet={sheet}
          places={places}
          boxes={boxes}
          onFocus={lightAt}
          onPress={touch}
          onCarry={carry}
        />
      </svg>
      {hands.ghost ? (
        <p className="ghost" style={{ left: hands.ghost[0], top: hands.ghost[1] }}>
          {hands.word}
        </p>
      ) : null}
      {corner ? (
        <button type="button" className="lift" style={{ left: corner[0], top: corner[1] }} onClick={props.onLift}>
          Lift off
        </button>
      ) : null}
      {field ? (
        <SizeField
          touched={field}
          at={windowPoint(view, sheet, [field.box.min[0], field.box.max[1]])}
          height={Math.max(16, (field.box.max[1] - field.box.min[1]) * view.scale)}
          onGive={(typed) => {
            const refusal = props.onSize(field, typed)
            if (refusal === undefined) leaveField(true)
            return refusal
          }}
          onLeave={leaveField}
        />
      ) : null}
      {props.children}
    </div>
  )
}
