/** What the stages made, for tests that are linked with them. No part of the public face: what is shown there is shown
 * by wend/wend.h. */
#ifndef WEND_LIBRARY_STAGES_H
#define WEND_LIBRARY_STAGES_H

#include "buying/order_list.h"
#include "plan/plan.h"
#include "takeoff/parts.h"

struct Wend;
struct WendOrder;

/** NULL unless the status is WEND_PASSES or WEND_CHECK_FAILS, and unless the whole plan was asked for. */
const struct Plan *wend_result(const struct Wend *wend);
const struct PartsList *wend_parts(const struct Wend *wend);
/** NULL unless the status is WEND_PASSES or WEND_CHECK_FAILS. */
const struct OrderList *wend_order_lines(const struct WendOrder *order);

#endif
