import { type RefObject, useEffect } from 'react'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { SheetHandle } from '../sheet/sheet-view.tsx'
import { layForPrint } from './save-file.ts'

/** However printing is begun, what comes out is the sheet. */
export function usePrint(handle: RefObject<SheetHandle | null>, sheet: Sheet | undefined): void {
  useEffect(() => {
    let clear = () => {}
    const before = () => {
      const drawn = handle.current?.svg()
      clear()
      if (drawn && sheet) clear = layForPrint(drawn, sheet.width, sheet.height)
    }
    const after = () => clear()
    addEventListener('beforeprint', before)
    addEventListener('afterprint', after)
    return () => {
      removeEventListener('beforeprint', before)
      removeEventListener('afterprint', after)
      clear()
    }
  }, [handle, sheet])
}
