#include "order_rig.h"
Suite *suite_order_documents(void)
{
    return suite_create("order: documents");
}
