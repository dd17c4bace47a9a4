/* Nothing but the header, twice. */
#include "beamcraft.h"
#include "beamcraft.h"

int main(void)
{
    return 0;
}
