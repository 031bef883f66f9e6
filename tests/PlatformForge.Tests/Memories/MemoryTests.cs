using System.Runtime.CompilerServices;
using PlatformForge.Units;
using PlatformForge.Units.Memories;
using Xunit;

namespace PlatformForge.Tests.Memories;

public class MemoryTests
{
    private sealed record Question(int Number, IReadOnlyList<double> Figures);

    private sealed record Answer(double Sum);

    private static Answer Add(Question question, CancellationToken cancel) => new(question.Number + question.Figures.Sum());

    [Fact]
    public void A_question_of_the_same_contents_gets_the_same_answer_object()
    {
        var memory = new Memory();
        var first = memory.Of("add", new Question(1, new double[] { 2, 3 }), Add);
        Assert.Equal(6, first.Sum);
        Assert.Same(first, memory.Of("add", new Question(1, new double[] { 2, 3 }), Add));
        Assert.NotSame(first, memory.Of("add", new Question(1, [2, 3.5]), Add));
        Assert.NotSame(first, memory.Of("add too", new Question(1, [2, 3]), Add));
        Assert.Equal((3, 2), memory.Counts["add"]);
    }

    [Fact]
    public void A_function_that_brings_anything_along_is_refused()
    {
        double along = DateTimeOffset.UnixEpoch.Year;
        Assert.Throws<BrokenInvariantException>(() => new Memory().Of("add", new Question(1, []), (q, _) => new Answer(q.Number + along)));
    }

    [Fact]
    public void Nothing_is_kept_of_work_that_is_stopped_or_fails()
    {
        var memory = new Memory();
        using var stop = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => memory.Of("add", new Stopping(stop), StopAndAdd, stop.Token));
        Assert.Throws<InvalidOperationException>(() => memory.Of("fail", new Question(1, []), Fail));
        Assert.Equal((1, 0), memory.Counts["add"]);
        Assert.Equal((1, 0), memory.Counts["fail"]);

        static Answer Fail(Question question, CancellationToken cancel) => throw new InvalidOperationException();

        static Answer StopAndAdd(Stopping input, CancellationToken cancel)
        {
            Stopping.Now!.Cancel();
            return new(1);
        }
    }

    private sealed record Stopping
    {
        public Stopping(CancellationTokenSource now) => Now = now;

        public static CancellationTokenSource? Now { get; private set; }
    }

    [Fact]
    public void What_was_not_asked_for_longest_is_forgotten_first()
    {
        var memory = new Memory(2);
        var first = memory.Of("add", new Question(1, []), Add);
        var second = memory.Of("add", new Question(2, []), Add);
        Assert.Same(first, memory.Of("add", new Question(1, []), Add));
        memory.Of("add", new Question(3, []), Add);
        Assert.Same(first, memory.Of("add", new Question(1, []), Add));
        Assert.NotSame(second, memory.Of("add", new Question(2, []), Add));
    }

    [Fact]
    public void An_answer_is_known_by_its_question_and_not_looked_into()
    {
        var memory = new Memory();
        var lazy = memory.Of("lazy", new Question(1, []), static (q, _) => new Lazy<int>(() => q.Number));
        var one = memory.Of("add", new Carrier(lazy), static (c, _) => new Answer(((Lazy<int>)c.Inner).Value));
        Assert.Same(one, memory.Of("add", new Carrier(lazy), static (c, _) => new Answer(((Lazy<int>)c.Inner).Value)));
        Assert.Throws<BrokenInvariantException>(() => memory.Of("add", new Carrier(new Lazy<int>(() => 1)), static (_, _) => new Answer(0)));
    }

    private sealed record Carrier(object Inner);

    [Fact]
    public void Any_number_of_threads_get_one_object()
    {
        var memory = new Memory();
        var answers = new Answer[64];
        Parallel.For(0, answers.Length, i => answers[i] = memory.Of("add", new Question(i % 4, [i % 4]), Add));
        Assert.Equal(4, answers.Distinct(ReferenceEqualityComparer.Instance).Count());
    }

    [Fact]
    public void The_first_object_of_the_same_contents_stands_for_the_others()
    {
        var memory = new Memory();
        Question first = new(1, [2]), second = new(1, [2]);
        Assert.Same(first, memory.Same(first));
        Assert.Same(first, memory.Same(second));
        Assert.Same(second, Memory.None.Same(second));
    }

    private sealed record Part(int Number);

    private sealed record Whole(IReadOnlyList<Part> Parts);

    [Fact]
    public void Whoever_holds_a_part_of_an_original_keeps_all_of_it_known()
    {
        var memory = new Memory();
        var held = FirstPart(memory);
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();
        Assert.Same(held, memory.Same(Anew(), w => w.Parts).Parts[0]);
    }

    // Of its own, so that nothing else of the original is held by the frame of the test.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static Part FirstPart(Memory memory) => memory.Same(Anew(), w => w.Parts).Parts[0];

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static Whole Anew() => new(new[] { new Part(1), new Part(2) });
}
