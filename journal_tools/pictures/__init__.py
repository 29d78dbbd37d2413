"""Pictures of cloth, drafts and figures, as PNG and SVG.

Each is imported from its own file, so that a tape needs no array and a drawdown no chart:

    cloth      thread on thread, in colours and proportions     card       the same, for a small space
    drawdown   the interlacement and the draft, drawn flat      described  a cloth picture in words
    colour     hex colours, contrast, undyed tones              png        palette files
    tape       the states of the cloth on a tape
"""
