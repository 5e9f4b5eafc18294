#include "order_rig.h"
Suite *suite_order_library(void)
{
    return suite_create("order: library");
}
