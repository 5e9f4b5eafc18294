/* Two plans held against each other, and a plan against what was measured. */
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

struct WendBytes wend_readings(struct Wend *wend, enum WendDiffForm form)
{
    struct Bytes bytes = {NULL, 0};
    if (wend_result(wend) != NULL) {
        switch (form) {
        case WEND_DIFF_TEXT: bytes = document_readings_text(wend->arena, wend->plan); break;
        case WEND_DIFF_CSV: bytes = document_readings_csv(wend->arena, wend->plan); break;
        case WEND_DIFF_JSON: bytes = document_readings_json(wend->arena, wend->plan); break;
        }
    }
    return library_bytes(bytes);
}

enum WendVerdict wend_readings_verdict(const struct Wend *wend)
{
    return library_plan(wend) == NULL ? WEND_FAIL : (enum WendVerdict)readings_verdict(wend->plan);
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
