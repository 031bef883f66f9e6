using System.Runtime.CompilerServices;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Pdf;
using PlatformForge.Exports.Pictures;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>What a build of many platforms borrows is lent again, and what it has written is let go of. The collector is the judge of what is still
/// held.</summary>
public sealed class LetGoTests
{
    [Fact]
    public void A_drawing_is_drawn_once_for_all_its_files_and_let_go_of_with_the_last_of_them()
    {
        int drawn = 0;
        var held = new WeakReference<Sheet>(null!);
        var shared = new SharedDrawing(() =>
        {
            drawn++;
            var sheet = Sheet();
            held.SetTarget(sheet);
            return sheet;
        });
        var svg = shared.File("a.svg", SvgWriter.Write);
        var words = shared.File("a.txt", sheet => [(byte)sheet.Items.Count]);
        byte[] first = svg.Make();
        Assert.True(IsHeld(held));
        words.Make();
        Assert.False(IsHeld(held));

        // Its page is what it would be of the sheet, and asks for no sheet; a file made once more is the same.
        Assert.Equal(Book(new("c", "c", [Sheet()])), Book(new("c", "c", []) { Drawn = [shared] }));
        Assert.Equal(1, drawn);
        Assert.Equal(first, svg.Make());
        Assert.Equal(2, drawn);
    }

    [Fact]
    public void A_field_given_back_is_lent_to_the_next_who_has_room_in_it_and_of_too_many_the_shortest_goes()
    {
        var fields = new LentFields(2);
        var lent = new[] { 4000, 5000, 3000 }.Select(length => Returned(fields, length)).ToArray();
        Assert.Equal([true, true, false], lent.Select(IsHeld));
        Assert.Equal(5000, fields.Rent(4500).Length);
        Assert.Equal(4000, fields.Rent(1000).Length);
        Assert.Equal(1000, fields.Rent(1000).Length);
        var last = Returned(fields, 6000);
        fields.LetGo();
        Assert.False(IsHeld(last));
    }

    private static byte[] Book(PdfChapter chapter) => PdfWriter.ToBytes(new("Invented", "nobody", [chapter]));

    private static Sheet Sheet()
    {
        var sheet = new Sheet(100, 80, "A line and a box");
        sheet.Line(new(1, 2), new(30, 40), HouseStyle.Outline);
        sheet.Box(10, 10, 20, 20, new Fill(HouseStyle.Ink, 0.5, Pattern.Falling));
        return sheet;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static WeakReference<float[]> Returned(LentFields fields, int length)
    {
        float[] field = new float[length];
        fields.GiveBack(field);
        return new(field);
    }

    private static bool IsHeld<T>(WeakReference<T> what)
        where T : class
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();
        return what.TryGetTarget(out _);
    }
}
