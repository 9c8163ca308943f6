/*
 * Reference firmware: an AVR reads a two-wire 24-bit bridge converter and sends every conversion as a "crc" line at
 * 115200 baud. For an ATmega328P at 16 MHz; pins and clock are set below.
 *
 * The converter (two wires, "data" and "clock"): data is low when a conversion is ready; 24 clock pulses shift it out, most
 * significant bit first, two's complement; one more pulse asks for the next conversion of the same input at the highest
 * gain. A clock held high for longer than about 60 microseconds puts it to sleep, so no interrupt may come in between.
 */
#ifndef F_CPU
#define F_CPU 16000000UL
#endif
#define BAUD 115200
/* 16 MHz divides to 117,647 baud, 2.1 % off: near the limit, but within what a receiver takes. 14.7456 MHz divides exactly. */
#define BAUD_TOL 3

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>
#include <stdint.h>
#include <util/atomic.h>
#include <util/delay.h>
#include <util/setbaud.h>

#include "crc_line.h"

#define DATA_PIN PD2
#define CLOCK_PIN PD3

/* Timer 1 counts half microseconds; it runs over every 32,768 microseconds. */
#define TICKS_PER_MICROSECOND 2
#define MICROSECONDS_PER_OVERFLOW 32768UL

static volatile uint32_t overflows;

ISR(TIMER1_OVF_vect)
{
    overflows++;
}

/* Microseconds since the start; starts again at 0 after 2^32 of them, as the line format says. */
static uint32_t microseconds(void)
{
    uint32_t whole;
    uint16_t ticks;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        whole = overflows;
        ticks = TCNT1;
        /* An overflow that happened just now and has not been counted yet. */
        if ((TIFR1 & _BV(TOV1)) && ticks < 0x8000)
            whole++;
    }
    return whole * MICROSECONDS_PER_OVERFLOW + ticks / TICKS_PER_MICROSECOND;
}

static void start_timer(void)
{
    TCCR1A = 0;
    TCCR1B = _BV(CS11);
    TIMSK1 = _BV(TOIE1);
}

static void start_serial(void)
{
    UBRR0 = UBRR_VALUE;
#if USE_2X
    UCSR0A = _BV(U2X0);
#else
    UCSR0A = 0;
#endif
    UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
    UCSR0B = _BV(TXEN0);
}

static void send(const char *bytes, uint8_t length)
{
    while (length-- > 0) {
        while (!(UCSR0A & _BV(UDRE0)))
            ;
        UDR0 = (uint8_t)*bytes++;
    }
}

static uint8_t clock_pulse(void)
{
    uint8_t bit;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        PORTD |= _BV(CLOCK_PIN);
        _delay_us(1);
        bit = (PIND >> DATA_PIN) & 1;
        PORTD &= (uint8_t)~_BV(CLOCK_PIN);
    }
    _delay_us(1);
    return bit;
}

static int32_t shift_out_conversion(void)
{
    uint32_t code = 0;
    for (uint8_t bit = 0; bit < 24; bit++)
        code = (code << 1) | clock_pulse();
    clock_pulse();
    if (code & 0x800000UL)
        code |= 0xFF000000UL;
    return (int32_t)code;
}

int main(void)
{
    char line[CRC_LINE_ROOM];
    uint32_t sequence = 0;

    /*
     * A converter that is silent for two seconds is woken by starting over; the sequence then begins at 0. After such a
     * reset the watchdog runs on with its shortest time, so it is set first of all.
     */
    MCUSR = 0;
    wdt_enable(WDTO_2S);

    DDRD |= _BV(CLOCK_PIN);
    PORTD &= (uint8_t)~_BV(CLOCK_PIN);
    /* With nothing connected the data line is pulled up: "not ready" rather than noise. */
    PORTD |= _BV(DATA_PIN);
    start_timer();
    start_serial();
    sei();
    /* A line end first, so that nothing heard before can run into the first line. */
    send("\r\n", 2);

    for (;;) {
        while (PIND & _BV(DATA_PIN))
            ;
        uint32_t ready = microseconds();
        int32_t counts = shift_out_conversion();
        wdt_reset();
        send(line, crc_line(line, sequence++, ready, counts));
    }
}
