using System.Buffers.Binary;
using System.IO.Compression;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class PictureTests
{
    private static readonly Dossier Dossier = HandDossier.Pendlewick();

    [Theory]
    [InlineData(1, 1)]
    [InlineData(7, 5)]
    [InlineData(64, 3)]
    public void A_PNG_reads_back_pixel_by_pixel_with_right_checksums(int width, int height)
    {
        var random = new Random(width);
        var image = new PixelImage(width, height, new byte[3 * width * height]);
        random.NextBytes(image.Pixels.AsSpan(0, image.Pixels.Length / 2)); // noise above, black below: both filters
        var read = ReadPng(PngWriter.ToBytes(image));
        Assert.Equal((width, height), (read.Width, read.Height));
        Assert.Equal(image.Pixels, read.Pixels);
    }

    [Fact]
    public void The_last_chunk_of_a_PNG_is_the_published_twelve_bytes()
    {
        // IEND with its checksum AE 42 60 82, as in every PNG (ISO/IEC 15948).
        var png = PngWriter.ToBytes(new(1, 1, [1, 2, 3]));
        Assert.Equal<byte>([0, 0, 0, 0, 0x49, 0x45, 0x4E, 0x44, 0xAE, 0x42, 0x60, 0x82], png[^12..]);
    }

    [Fact]
    public void One_thread_and_two_draw_the_same_pixels()
    {
        var platform = Dossier.Platforms[0];
        Assert.Equal(
            PlatformPictures.Finished(Dossier, platform, 240, threads: 1).Pixels,
            PlatformPictures.Finished(Dossier, platform, 240, threads: 2).Pixels);
    }

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void The_finished_platform_shows_deck_coping_and_wall_from_the_tracks_side(Side side)
    {
        var dossier = HandDossier.Pendlewick(side);
        var image = PlatformPictures.Finished(dossier, dossier.Platforms[0], 300);
        var pixels = Enumerable.Range(0, image.Width * image.Height)
            .Select(i => (R: image.Pixels[3 * i], G: image.Pixels[(3 * i) + 1], B: image.Pixels[(3 * i) + 2])).ToArray();
        Assert.True(pixels.Count(p => p.R > p.B + 30 && p.R < 200) > 300, "no wall of brick is to be seen");
        Assert.True(pixels.Count(p => Math.Abs(p.R - p.B) < 16 && p.R is > 60 and < 150) > 1500, "no deck is to be seen");
    }

    [Fact]
    public void A_light_square_on_a_sheet_covers_its_own_area()
    {
        // Seen from straight above in 80 x 40 pixels with a margin of 8, a plan of 20 x 10 mm may be 24 pixels high: 48 x 24.
        var box = new SceneBody(HandSolids.Box(20, 10, 5), [new(255, 255, 255)], Outlined: false) { Grain = 0 };
        var image = PictureMaker.Draw(new([box], new(0, 0, 1), new(1, 0, 0), new(0, 0, 1), null) { Margin = 0.1, LeastAspect = 0.5, MostAspect = 0.5 }, 80);
        Assert.Equal((80, 40), (image.Width, image.Height));
        int middle = image.Pixels[3 * ((20 * 80) + 40)], lit = 0;
        for (int i = 0; i < 80 * 40; i++)
        {
            lit += image.Pixels[3 * i] == middle ? 1 : 0;
        }

        Assert.Equal(48 * 24, lit);
    }

    [Fact]
    public void Track_bodies_are_closed_and_outward()
    {
        var line = Dossier.Tracks[0].Ride;
        foreach (var body in TrackBodies.Of(line, 300, 500, 76.2, 16.5, 8))
        {
            var edges = new HashSet<(int, int)>();
            var t = body.Mesh.Triangles;
            for (int i = 0; i < t.Length; i++)
            {
                Assert.True(edges.Add((t[i], t[i - (i % 3) + ((i + 1) % 3)])));
            }

            Assert.All(edges, e => Assert.Contains((e.Item2, e.Item1), edges));
            Assert.True(body.Mesh.Volume() > 0);
        }
    }

    [Fact]
    public void A_rail_has_the_volume_of_its_section_times_its_length()
    {
        var line = TrackLayer.Lay(new("s", new(0, 0), 0, [new StraightSpec(200)])).Value!;
        var rail = SweptProfile.Along(line, [0, 50, 200], [new(1, 0), new(3, 0), new(3, 5), new(1, 5)]);
        Assert.Equal(2 * 5 * 200, rail.Volume(), 9);
        Assert.Equal((new Point3(0, 1, 0), new Point3(200, 3, 5)), rail.Box());
    }

    /// <summary>A reader of the kind of PNG we write, its checksums worked out bit by bit.</summary>
    private static PixelImage ReadPng(byte[] png)
    {
        Assert.Equal<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8]);
        int at = 8, width = 0, height = 0;
        using var packed = new MemoryStream();
        while (at < png.Length)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at));
            var body = png.AsSpan(at + 4, length + 4);
            Assert.Equal(Checksum(body), BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at + 8 + length)));
            if (body[..4].SequenceEqual("IHDR"u8))
            {
                (width, height) = (BinaryPrimitives.ReadInt32BigEndian(body[4..]), BinaryPrimitives.ReadInt32BigEndian(body[8..]));
                Assert.Equal<byte>([8, 2, 0, 0, 0], body[12..].ToArray());
            }
            else if (body[..4].SequenceEqual("IDAT"u8))
            {
                packed.Write(body[4..]);
            }

            at += length + 12;
        }

        packed.Position = 0;
        using var zlib = new ZLibStream(packed, CompressionMode.Decompress);
        using var rows = new MemoryStream();
        zlib.CopyTo(rows);
        return new(width, height, Unfilter(rows.ToArray(), width, height));
    }

    private static byte[] Unfilter(byte[] rows, int width, int height)
    {
        int length = 3 * width;
        var pixels = new byte[length * height];
        for (int y = 0; y < height; y++)
        {
            int kind = rows[y * (length + 1)];
            for (int i = 0; i < length; i++)
            {
                int left = i < 3 ? 0 : pixels[(y * length) + i - 3], up = y == 0 ? 0 : pixels[((y - 1) * length) + i],
                    corner = i < 3 || y == 0 ? 0 : pixels[((y - 1) * length) + i - 3];
                int p = left + up - corner;
                int paeth = new[] { left, up, corner }.MinBy(q => Math.Abs(p - q));
                int guess = kind switch { 0 => 0, 1 => left, 2 => up, 3 => (left + up) / 2, _ => paeth };
                pixels[(y * length) + i] = (byte)(rows[(y * (length + 1)) + 1 + i] + guess);
            }
        }

        return pixels;
    }

    private static uint Checksum(ReadOnlySpan<byte> bytes)
    {
        uint c = uint.MaxValue;
        foreach (byte b in bytes)
        {
            c ^= b;
            for (int bit = 0; bit < 8; bit++)
            {
                c = (c & 1) != 0 ? (c >> 1) ^ 0xEDB88320 : c >> 1;
            }
        }

        return ~c;
    }
}
