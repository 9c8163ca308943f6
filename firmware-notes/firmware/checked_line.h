/* One reading as a line of the format "checked": $BL,<sequence>,<microseconds>,<counts>*HH  CR LF. No hardware in here. */
#ifndef CHECKED_LINE_H
#define CHECKED_LINE_H

#include <stdint.h>

/* "$BL," + 10 + "," + 10 + "," + 8 + "*HH\r\n" is 39 bytes. */
#define CHECKED_LINE_ROOM 48

static char *put_decimal(char *at, uint32_t value)
{
    char digits[10];
    uint8_t count = 0;
    do {
        digits[count++] = (char)('0' + value % 10);
        value /= 10;
    } while (value != 0);
    while (count > 0)
        *at++ = digits[--count];
    return at;
}

static char hexadecimal_digit(uint8_t value)
{
    return (char)(value < 10 ? '0' + value : 'A' + (value - 10));
}

/* Writes the line into `line` (CHECKED_LINE_ROOM bytes) and returns its length. */
static uint8_t checked_line(char *line, uint32_t sequence, uint32_t microseconds, int32_t counts)
{
    char *at = line;
    uint8_t check = 0;

    *at++ = '$';
    *at++ = 'B';
    *at++ = 'L';
    *at++ = ',';
    at = put_decimal(at, sequence);
    *at++ = ',';
    at = put_decimal(at, microseconds);
    *at++ = ',';
    if (counts < 0) {
        *at++ = '-';
        at = put_decimal(at, (uint32_t)0 - (uint32_t)counts);
    } else {
        at = put_decimal(at, (uint32_t)counts);
    }
    /* Everything between '$' and '*', neither of them included. */
    for (const char *byte = line + 1; byte < at; byte++)
        check ^= (uint8_t)*byte;
    *at++ = '*';
    *at++ = hexadecimal_digit(check >> 4);
    *at++ = hexadecimal_digit(check & 15);
    *at++ = '\r';
    *at++ = '\n';
    return (uint8_t)(at - line);
}

#endif
