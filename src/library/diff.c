/* Two plans held against each other. */
#include "library_private.h"

static struct Bytes made(struct Wend *wend, const struct DiffSide *old, const struct DiffSide *now,
                         enum WendDiffForm form)
{
    switch (form) {
    case WEND_DIFF_TEXT: return document_diff_text(wend->arena, old, now);
    case WEND_DIFF_CSV: return document_diff_csv(wend->arena, old, now);
    case WEND_DIFF_JSON: return document_diff_json(wend->arena, old, now);
    }
    return (struct Bytes){NULL, 0};
}

struct WendBytes wend_diff(const struct Wend *old, struct Wend *wend, enum WendDiffForm form)
{
    if (wend_result(old) == NULL || wend_result(wend) == NULL) {
        return (struct WendBytes){NULL, 0};
    }
    const struct DiffSide before = {old->plan, old->parts};
    const struct DiffSide after = {wend->plan, wend->parts};
    return library_bytes(made(wend, &before, &after, form));
}
