import { localRoughness, roughnessIn } from '../../measure/texture.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'texture-as-general',
  weight: 'look again',
  source: 'common practice, no source: a symbol at a surface says what the title block does not',
  about:
    'A texture at a surface that asks for what the title block asks for everywhere tells the shop nothing, and hides the ones that do.',
  reads: 'brief',
  check: ({ brief }) => {
    const { texture } = brief.header
    const [general] = texture ? roughnessIn(texture.text) : []
    return (brief.textures ?? []).flatMap((t) =>
      general !== undefined && t.removal === 'any' && !t.lay && !t.process && localRoughness(t) === general
        ? [
            {
              text: `The texture of ${t.of.text}, ${t.value.text}, is the general one.`,
              span: t.span,
              expected: 'another value, or no such statement',
            },
          ]
        : [],
    )
  },
}
