package eaveside.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** Draws the photos that go with findings: nobody's roof, and small. */
final class Drawing {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 480;
    private static final Color SKY = new Color(0xb9d3e6);
    private static final Color ROOF = new Color(0x7a6a60);
    private static final Color GLASS = new Color(0x1d2f4f);
    private static final Color FRAME = new Color(0xc9ced4);
    private static final Color MOSS = new Color(0x5f7d3a);
    private static final Color WOOD = new Color(0x6b4a2f);

    private Drawing() {}

    /** A JPEG of what was seen, as a phone would send it. */
    static byte[] of(Sighting what, Dice dice) {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setPaint(new GradientPaint(0, 0, SKY, 0, HEIGHT, ROOF));
        pen.fillRect(0, 0, WIDTH, HEIGHT);
        switch (what) {
            case CRACKED, LOOSE_CLAMP, CONDUIT, NEST -> panels(pen);
            case LICHEN, GUTTER, TREE, SEAL -> shingles(pen);
        }
        switch (what) {
            case CRACKED -> crack(pen, dice);
            case LOOSE_CLAMP -> clamp(pen, dice);
            case CONDUIT -> conduit(pen, dice);
            case LICHEN -> spots(pen, dice, MOSS, 60);
            case NEST -> spots(pen, dice, WOOD, 140);
            case GUTTER -> gutter(pen, dice);
            case TREE -> branches(pen, dice);
            case SEAL -> skylight(pen);
        }
        pen.dispose();
        return jpeg(image);
    }

    private static void panels(Graphics2D pen) {
        for (int row = 0; row < 2; row++) {
            for (int column = 0; column < 3; column++) {
                int x = 20 + column * 205;
                int y = 90 + row * 190;
                pen.setColor(FRAME);
                pen.fillRect(x, y, 195, 180);
                pen.setColor(GLASS);
                pen.fillRect(x + 6, y + 6, 183, 168);
                pen.setColor(GLASS.brighter());
                for (int cell = 1; cell < 6; cell++) {
                    pen.drawLine(x + 6 + cell * 30, y + 6, x + 6 + cell * 30, y + 174);
                    pen.drawLine(x + 6, y + 6 + cell * 28, x + 189, y + 6 + cell * 28);
                }
            }
        }
    }

    private static void shingles(Graphics2D pen) {
        for (int row = 0; row < 12; row++) {
            for (int column = -1; column < 14; column++) {
                pen.setColor(row % 2 == 0 ? ROOF : ROOF.darker());
                pen.fillRect(column * 50 + row % 2 * 25, 100 + row * 34, 48, 32);
            }
        }
    }

    private static void crack(Graphics2D pen, Dice dice) {
        int x = dice.between(260, 400);
        int y = dice.between(140, 230);
        pen.setColor(Color.WHITE);
        for (int ray = 0; ray < 11; ray++) {
            int bendX = x + dice.between(-70, 70);
            int bendY = y + dice.between(-60, 60);
            pen.drawLine(x, y, bendX, bendY);
            pen.drawLine(bendX, bendY, bendX + dice.between(-60, 60), bendY + dice.between(-50, 50));
        }
    }

    private static void clamp(Graphics2D pen, Dice dice) {
        pen.setColor(Color.LIGHT_GRAY);
        pen.rotate(dice.between(10, 30) / 100.0, 320, 275);
        pen.fillRect(285, 262, 70, 26);
        pen.setColor(Color.DARK_GRAY);
        pen.fillOval(312, 267, 16, 16);
    }

    private static void conduit(Graphics2D pen, Dice dice) {
        pen.setStroke(new BasicStroke(14));
        pen.setColor(Color.GRAY);
        pen.drawLine(0, 455, 280, 455);
        pen.drawLine(350, 455 + dice.between(5, 18), WIDTH, 455);
        pen.setStroke(new BasicStroke(4));
        pen.setColor(new Color(0xb03020));
        pen.drawArc(270, 430, 90, 40, 180, 180);
    }

    private static void spots(Graphics2D pen, Dice dice, Color color, int count) {
        for (int i = 0; i < count; i++) {
            int size = dice.between(6, 34);
            pen.setColor(dice.percent(50) ? color : color.brighter());
            pen.fillOval(dice.between(120, 460), dice.between(180, 400), size, size * 2 / 3);
        }
    }

    private static void gutter(Graphics2D pen, Dice dice) {
        pen.setColor(FRAME);
        pen.fillRect(0, 330, WIDTH, 90);
        for (int i = 0; i < 160; i++) {
            pen.setColor(dice.percent(60) ? WOOD : MOSS.darker());
            pen.fillOval(dice.between(0, WIDTH), dice.between(325, 380), dice.between(10, 40), 12);
        }
    }

    private static void branches(Graphics2D pen, Dice dice) {
        pen.setColor(WOOD);
        pen.setStroke(new BasicStroke(9));
        for (int i = 0; i < 5; i++) {
            pen.drawLine(WIDTH, dice.between(0, 120), dice.between(180, 420), dice.between(120, 330));
        }
        spots(pen, dice, MOSS, 150);
    }

    private static void skylight(Graphics2D pen) {
        pen.setColor(FRAME);
        pen.fillRect(180, 130, 280, 230);
        pen.setColor(SKY.darker());
        pen.fillRect(200, 150, 240, 190);
        pen.setStroke(new BasicStroke(6));
        pen.setColor(Color.DARK_GRAY);
        pen.drawLine(198, 344, 330, 344);
        pen.drawArc(320, 330, 70, 26, 180, 170);
    }

    private static byte[] jpeg(BufferedImage image) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(image, "jpeg", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
