/* One reading as a line of the format "crc": $BC,<sequence>,<microseconds>,<counts>*HHHH  CR LF. No hardware in here. */
#ifndef CRC_LINE_H
#define CRC_LINE_H

#include <stdint.h>

/* "$BC," + 10 + "," + 10 + "," + 8 + "*HHHH\r\n" is 41 bytes. */
#define CRC_LINE_ROOM 48

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

/* CRC-16/CCITT-FALSE with one more byte: polynomial 1021, highest bit first. Bit by bit, as a table takes 512 bytes. */
static uint16_t crc_with(uint16_t check, uint8_t byte)
{
    check ^= (uint16_t)((uint16_t)byte << 8);
    for (uint8_t bit = 0; bit < 8; bit++)
        check = (uint16_t)(check & 0x8000 ? (uint16_t)(check << 1) ^ 0x1021 : check << 1);
    return check;
}

/* Writes the line into `line` (CRC_LINE_ROOM bytes) and returns its length. */
static uint8_t crc_line(char *line, uint32_t sequence, uint32_t microseconds, int32_t counts)
{
    char *at = line;
    uint16_t check = 0xFFFF;

    *at++ = '$';
    *at++ = 'B';
    *at++ = 'C';
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
        check = crc_with(check, (uint8_t)*byte);
    *at++ = '*';
    for (int8_t shift = 12; shift >= 0; shift -= 4)
        *at++ = hexadecimal_digit((uint8_t)(check >> shift) & 15);
    *at++ = '\r';
    *at++ = '\n';
    return (uint8_t)(at - line);
}

#endif
