using System.Runtime.CompilerServices;

namespace PlatformForge.Units.Memories;

/// <summary>
/// What earlier runs found out, so that a run redoes only what hangs on what has changed. A stage is a pure function of its input: its answer is kept under the
/// fingerprint of the stage's name and everything the input holds. Answers are kept when they are whole, so a run that is stopped leaves nothing half made.
/// </summary>
/// <remarks>
/// Safe for any number of threads at once. Two that ask the same at once may both work; both get the same object. What was not asked for longest is
/// forgotten first.
/// </remarks>
public sealed class Memory
{
    /// <summary>Answers kept where nothing else is said: some hundred runs of a platform of ten sections.</summary>
    public const int UsualMost = 600;

    private readonly int most;
    private readonly Lock key = new();
    private readonly Dictionary<Fingerprint, LinkedListNode<(Fingerprint Question, object Answer)>> answers = [];
    private readonly LinkedList<(Fingerprint Question, object Answer)> byUse = new();
    private readonly Dictionary<Fingerprint, WeakReference<object>> originals = [];
    private readonly ConditionalWeakTable<object, object> wholes = [];
    private readonly Dictionary<string, (int Asked, int Made)> counts = new(StringComparer.Ordinal);
    private readonly Fingerprints prints = new();

    /// <param name="most">Most answers kept; above nil.</param>
    public Memory(int most = UsualMost)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        this.most = most;
    }

    private Memory() => most = 0;

    /// <summary>Remembers nothing and takes no fingerprints: for a process that runs once.</summary>
    public static Memory None { get; } = new();

    /// <summary>How often each stage was asked, and how often it had to work.</summary>
    public IReadOnlyDictionary<string, (int Asked, int Made)> Counts
    {
        get
        {
            lock (key)
            {
                return new Dictionary<string, (int, int)>(counts, StringComparer.Ordinal);
            }
        }
    }

    /// <summary>The answer of a stage to an input.</summary>
    /// <param name="stage">Name of the stage; one name, one function.</param>
    /// <param name="input">Everything that the answer depends on.</param>
    /// <param name="make">The function. It takes the input and nothing else: one that brings anything along is refused, since the key would not know of
    /// it.</param>
    /// <param name="cancel">Stops the work; what is then left of it is not kept.</param>
    public TAnswer Of<TInput, TAnswer>(string stage, TInput input, Func<TInput, CancellationToken, TAnswer> make, CancellationToken cancel = default)
        where TInput : class
        where TAnswer : class
    {
        ArgumentNullException.ThrowIfNull(make);
        cancel.ThrowIfCancellationRequested();
        if (most == 0)
        {
            return make(input, cancel);
        }

        if (make.Target is { } brought && brought.GetType()
            .GetFields(System.Reflection.BindingFlags.Instance | System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.NonPublic).Length > 0)
        {
            throw new BrokenInvariantException($"Memory: the stage \"{stage}\" uses more than its input.");
        }

        var question = prints.Of(stage, input);
        if (Known(stage, question) is TAnswer known)
        {
            return known;
        }

        var made = make(input, cancel);
        cancel.ThrowIfCancellationRequested();
        return (TAnswer)Keep(stage, question, made);
    }

    /// <summary>
    /// The first object that held what this one holds, as long as anybody has it: results that were remembered speak of the objects they were made from, and
    /// are compared with
    /// those of today by reference here and there.
    /// </summary>
    /// <param name="value">The object.</param>
    /// <param name="parts">What belongs to it: as long as anybody has one of the original's, the original is known, too, and with it all the others.</param>
    public T Same<T>(T value, Func<T, IEnumerable<object>>? parts = null)
        where T : class
    {
        if (most == 0)
        {
            return value;
        }

        var print = prints.Of("same", value);
        lock (key)
        {
            if (originals.TryGetValue(print, out var kept) && kept.TryGetTarget(out object? original))
            {
                return (T)original;
            }

            originals[print] = new(value);
            foreach (object part in parts?.Invoke(value) ?? [])
            {
                wholes.TryAdd(part, value);
            }

            if (originals.Count > 16 * most)
            {
                foreach (var gone in originals.Where(o => !o.Value.TryGetTarget(out _)).Select(o => o.Key).ToArray())
                {
                    originals.Remove(gone);
                }
            }

            return value;
        }
    }

    private object? Known(string stage, Fingerprint question)
    {
        lock (key)
        {
            var (asked, made) = counts.GetValueOrDefault(stage);
            counts[stage] = (asked + 1, made);
            if (!answers.TryGetValue(question, out var node))
            {
                return null;
            }

            byUse.Remove(node);
            byUse.AddFirst(node);
            return node.Value.Answer;
        }
    }

    private object Keep(string stage, Fingerprint question, object answer)
    {
        lock (key)
        {
            var (asked, made) = counts.GetValueOrDefault(stage);
            counts[stage] = (asked, made + 1);
            if (answers.TryGetValue(question, out var node))
            {
                return node.Value.Answer;
            }

            prints.Know(answer, question);
            if (answer is IAnswer { Inner: { } inner })
            {
                prints.Know(inner, question with { A = ~question.A });
            }

            answers[question] = byUse.AddFirst((question, answer));
            if (answers.Count > most)
            {
                answers.Remove(byUse.Last!.Value.Question);
                byUse.RemoveLast();
            }

            return answer;
        }
    }
}
