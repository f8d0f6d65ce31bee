import { useCallback, useEffect, useState } from 'react'
import {
  type KeptModel,
  keepModel,
  layDown,
  listModels,
  lying,
  MOST_OF_ONE,
  takeModel,
  throwModel,
} from '../shelf/models.ts'
import type { OpenedModel } from './use-model.ts'

/**
 * Solid models on the shelf, and the one that lies on the bench; it lies there again after reloading, unless the server
 * was `asked` to open a brief. Nothing is laid before it is known whether it was.
 */
export function useKeptModels(tell: (text: string) => void, known: boolean, asked: boolean) {
  const [model, setModel] = useState<OpenedModel>()
  const [models, setModels] = useState<readonly KeptModel[]>([])
  const refresh = useCallback(() => void listModels().then(setModels), [])
  const take = useCallback(
    async (id: string) => {
      const found = await takeModel(id)
      layDown(found && id)
      if (found) setModel(found)
      else tell('That model is no longer on the shelf of this browser.')
      refresh()
    },
    [tell, refresh],
  )
  useEffect(() => {
    if (!known) return
    const last = asked ? undefined : lying()
    if (last) void take(last)
    else refresh()
  }, [known, asked, take, refresh])
  return {
    model,
    models,
    take,
    /** A model that was opened from a file. */
    open: useCallback(
      (name: string, text: string) => {
        setModel({ name, text })
        layDown(undefined)
        void keepModel(name, text).then((kept) => {
          layDown(kept?.id)
          refresh()
          if (!kept)
            tell(
              text.length > MOST_OF_ONE
                ? `${name} has more than ${MOST_OF_ONE / 1_000_000} million characters and is not kept: after reloading it is opened again.`
                : `This browser keeps no models: after reloading, ${name} is opened again.`,
            )
        })
      },
      [tell, refresh],
    ),
    putBack: useCallback(() => {
      layDown(undefined)
      setModel(undefined)
    }, []),
    throwAway: useCallback(
      (id: string) => {
        void throwModel(id).then(refresh, refresh)
      },
      [refresh],
    ),
  }
}
